import { Link } from '@tanstack/react-router';
import { PageTitle } from './PageTitle.tsx';

export function NotFound() {
  return (
    <div className="page">
      <PageTitle name="Not found">There is no page here</PageTitle>
      <p>The address may be old or mistyped.</p>
      <p>
        <Link to="/jobs">All jobs</Link> or <Link to="/">today</Link>.
      </p>
    </div>
  );
}

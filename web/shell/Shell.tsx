import { Link, Outlet, useLocation } from '@tanstack/react-router';
import { useShop } from '#web/api/queries.ts';
import { ConnectionState } from './ConnectionState.tsx';
import { SystemSwitch } from './SystemSwitch.tsx';
import { Toasts } from './toasts.tsx';

/** What stands around every screen; a pour has the whole of it. */
export function Shell() {
  const shop = useShop();
  const pouring = useLocation({ select: ({ pathname }) => pathname.startsWith('/run/') });
  if (pouring)
    return (
      <>
        <main id="main" tabIndex={-1}>
          <Outlet />
        </main>
        <Toasts />
      </>
    );
  return (
    <>
      <a className="skip" href="#main">
        Skip to the content
      </a>
      <header className="shell-header">
        <p className="shell-name">
          <Link to="/">{shop.name === '' ? 'Pourwright' : shop.name}</Link>
        </p>
        <nav aria-label="Main" className="shell-nav">
          <Link to="/" activeOptions={{ exact: true }}>
            Today
          </Link>
          <Link to="/jobs" activeOptions={{ exact: false }}>
            Jobs
          </Link>
          <Link to="/resins" activeOptions={{ exact: false }}>
            Resins
          </Link>
          <Link to="/shop">Shop</Link>
        </nav>
        <ConnectionState />
        <SystemSwitch />
      </header>
      <main id="main" tabIndex={-1}>
        <Outlet />
      </main>
      <Toasts />
    </>
  );
}

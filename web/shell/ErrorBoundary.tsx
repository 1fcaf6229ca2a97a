import { Component, type ReactNode } from 'react';
import { Trouble } from './Trouble.tsx';

/** The last net: a mistake in the program. What was typed is on this device already. */
export class ErrorBoundary extends Component<{ readonly children: ReactNode }, { readonly error: unknown }> {
  override state: { readonly error: unknown } = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error };
  }

  override render(): ReactNode {
    if (this.state.error === null) return this.props.children;
    return (
      <main>
        <Trouble
          title="This screen stopped working"
          error={this.state.error}
          retry={() => this.setState({ error: null })}
        >
          <p>What you typed is kept on this device and comes back when the page is opened again.</p>
        </Trouble>
      </main>
    );
  }
}

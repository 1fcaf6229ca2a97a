import { Component, type ReactNode } from 'react';

interface Props {
  /** What stands here, as it is called: "The drawing". */
  readonly what: string;
  /** When this changes, it is tried again. */
  readonly of: unknown;
  readonly children: ReactNode;
}

interface State {
  readonly failed: string | null;
  readonly of: unknown;
}

/** A picture that cannot be drawn says so in its place; the figures around it stay in use. */
export class Guard extends Component<Props, State> {
  override state: State = { failed: null, of: this.props.of };

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  static getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    return Object.is(props.of, state.of) ? null : { failed: null, of: props.of };
  }

  override render(): ReactNode {
    if (this.state.failed === null) return this.props.children;
    return (
      <p className="problem-block" role="alert">
        {this.props.what} could not be drawn ({this.state.failed}). The figures are not affected.
      </p>
    );
  }
}

import { Component, type ReactNode } from "react";
import { shellText } from "../texts/shell.ts";

/** What a page shows when the program itself has a fault, or a part of it could not be loaded: never a blank window. */
export class FaultBoundary extends Component<{ children: ReactNode }, { isBroken: boolean }> {
  override state = { isBroken: false };

  static getDerivedStateFromError(): { isBroken: boolean } {
    return { isBroken: true };
  }

  override render(): ReactNode {
    if (!this.state.isBroken) return this.props.children;
    return (
      <div role="alert" className="notice fault">
        <p>
          <strong>{shellText("brokenTitle")}.</strong> {shellText("brokenDetail")}
        </p>
        <button type="button" onClick={() => location.reload()}>
          {shellText("reload")}
        </button>
      </div>
    );
  }
}

import type { MouseEvent, ReactNode } from "react";
import { goTo } from "./address.ts";

/** A link to another address of the page. With a modifier key it is the browser's, as any link. */
export function PageLink(props: {
  to: string;
  className?: string;
  isCurrent?: boolean;
  children: ReactNode;
}): ReactNode {
  const { to, className = "step", isCurrent = false, children } = props;
  const follow = (event: MouseEvent): void => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    goTo(to);
  };
  return (
    <a className={className} href={to} onClick={follow} aria-current={isCurrent ? "page" : undefined}>
      {children}
    </a>
  );
}

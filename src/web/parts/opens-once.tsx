import { type ReactNode, useState } from "react";

/** Details whose content is made when they are opened first, and kept from then on: a page may have many forms that nobody opens. */
export function OpensOnce(props: {
  summary: string;
  /** Completes the summary for who cannot see where it stands; begins with its words. */
  label?: string;
  className?: string;
  children: ReactNode;
}): ReactNode {
  const { summary, label, className = "on-screen", children } = props;
  const [wasOpened, setOpened] = useState(false);
  return (
    <details className={className} onToggle={() => setOpened(true)}>
      <summary aria-label={label}>{summary}</summary>
      {wasOpened && children}
    </details>
  );
}

import type { ReactNode } from "react";

/** Words that the server or a person wrote: they come in one language, whatever the page speaks. */
export function Said({ children }: { children: ReactNode }): ReactNode {
  return (
    <span lang="en-US" data-said="">
      {children}
    </span>
  );
}

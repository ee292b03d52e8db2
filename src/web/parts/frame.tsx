import { type ReactNode, useEffect, useRef } from "react";
import { hasJustGone } from "./address.ts";

/** What every page has around it. `title` is its heading and, with the product's name, the title of the window. */
export function Frame(props: { title: string; facility?: string | undefined; children: ReactNode }): ReactNode {
  const { title, facility, children } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} – Dwell Ledger`;
  }, [title]);
  useEffect(() => {
    if (hasJustGone()) heading.current?.focus();
  }, []);
  return (
    <>
      <a className="skip" href="#content">
        Skip to the figures
      </a>
      <header className="top">
        <p className="name">Dwell Ledger</p>
        {facility !== undefined && <p className="place">{facility}</p>}
      </header>
      <main id="content" tabIndex={-1}>
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {children}
      </main>
      <footer>
        <p>
          This tool counts and reminds. Removal and insertion follow the unit's infection-control policy, the
          prescriber's order and your licensed practice.
        </p>
        <p>
          <a className="step" href="/docs">
            The same figures for programs
          </a>
        </p>
      </footer>
    </>
  );
}

import { type ReactNode, useEffect, useRef } from "react";
import { shellText } from "../texts/shell.ts";
import { hasJustGone } from "./address.ts";

/** One page: `title` is its heading and, with the product's name, the title of the window. `heading` may say it richer. */
export function Page(props: { title: string; heading?: ReactNode; children: ReactNode }): ReactNode {
  const { title, heading, children } = props;
  const place = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = shellText("windowTitle", { title });
  }, [title]);
  useEffect(() => {
    if (!hasJustGone()) return;
    scrollTo(0, 0);
    place.current?.focus();
  }, []);
  return (
    <>
      <h1 ref={place} tabIndex={-1}>
        {heading ?? title}
      </h1>
      {children}
    </>
  );
}

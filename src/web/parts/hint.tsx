import { type ReactNode, useState } from "react";
import { shellText } from "../texts/shell.ts";

/** A hint for the first visit; once it was read it does not come back on this device. `name` names it. */
export function Hint({ name, title, children }: { name: string; title: string; children: ReactNode }): ReactNode {
  const place = `dwell-hint-${name}`;
  const [isRead, setRead] = useState(() => localStorage.getItem(place) !== null);
  if (isRead) return null;
  const close = (): void => {
    localStorage.setItem(place, "read");
    setRead(true);
  };
  return (
    <aside className="notice hint" aria-label={title}>
      <p>
        <strong>{title}.</strong> {children}
      </p>
      <button type="button" onClick={close}>
        {shellText("hintDone")}
      </button>
    </aside>
  );
}

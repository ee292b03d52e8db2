import { type FormEvent, type ReactNode, useState } from "react";
import { type Month, month as monthText } from "../../../shared/day.ts";
import { goTo } from "./address.ts";
import { PageLink } from "./page-link.tsx";
import { monthAfter, monthWords } from "./words.ts";

/** The address of a month. */
export function monthAddress(month: Month): string {
  return `/months/${month}`;
}

/** Leads to the month before, the month after (none later than `latest`), and to any month. */
export function MonthPicker({ month, latest }: { month: Month; latest: Month }): ReactNode {
  const before = monthAfter(month, -1);
  const after = monthAfter(month, 1);
  return (
    <nav aria-label="Month" className="months">
      {before && <PageLink to={monthAddress(before)}>← {monthWords(before)}</PageLink>}
      {after && after <= latest && <PageLink to={monthAddress(after)}>{monthWords(after)} →</PageLink>}
      <MonthForm month={month} latest={latest} />
    </nav>
  );
}

function MonthForm({ month, latest }: { month: Month; latest: Month }): ReactNode {
  const [text, setText] = useState<string>(month);
  const [isWrong, setWrong] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const read = monthText.safeParse(text.trim());
    setWrong(!read.success);
    if (read.success) goTo(monthAddress(read.data));
  };
  return (
    <form onSubmit={submit} noValidate>
      <label htmlFor="month">Another month</label>
      <input
        id="month"
        type="month"
        max={latest}
        value={text}
        placeholder="YYYY-MM"
        aria-invalid={isWrong}
        aria-describedby={isWrong ? "month-wrong" : undefined}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit">Show</button>
      {isWrong && (
        <p id="month-wrong" role="alert">
          Write the month as YYYY-MM, such as {latest}.
        </p>
      )}
    </form>
  );
}

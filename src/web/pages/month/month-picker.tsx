import { type FormEvent, type ReactNode, useState } from "react";
import { type Month, month as monthText } from "../../../../shared/day.ts";
import { goTo } from "../../parts/address.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { monthAfter, monthWords } from "../../parts/words.ts";
import { monthText as words } from "../../texts/month.ts";

/** The address of a month, with another one beside it when given. */
function monthAddress(month: Month, beside: Month | null): string {
  return beside === null ? `/months/${month}` : `/months/${month}?beside=${beside}`;
}

/** Leads to the month before, the month after (none later than `latest`), to any month, and sets another one beside it. */
export function MonthPicker(props: { month: Month; latest: Month; beside: Month | null }): ReactNode {
  const { month, latest, beside } = props;
  const before = monthAfter(month, -1);
  const after = monthAfter(month, 1);
  return (
    <nav aria-label={words("picker")} className="months">
      {before && <PageLink to={monthAddress(before, null)}>← {monthWords(before)}</PageLink>}
      {after && after <= latest && <PageLink to={monthAddress(after, null)}>{monthWords(after)} →</PageLink>}
      <MonthForm
        id="month"
        label={words("another")}
        button={words("show")}
        first={month}
        latest={latest}
        go={(chosen) => goTo(monthAddress(chosen, null))}
      />
      <MonthForm
        id="beside"
        label={words("beside")}
        button={words("setBeside")}
        first={beside ?? before ?? month}
        latest={latest}
        go={(chosen) => goTo(monthAddress(month, chosen))}
      />
      {beside && <PageLink to={monthAddress(month, null)}>{words("alone", { month: monthWords(month) })}</PageLink>}
    </nav>
  );
}

function MonthForm(props: {
  id: string;
  label: string;
  button: string;
  first: Month;
  latest: Month;
  go: (month: Month) => void;
}): ReactNode {
  const { id, label, button, first, latest, go } = props;
  const [text, setText] = useState<string>(first);
  const [isWrong, setWrong] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const read = monthText.safeParse(text.trim());
    setWrong(!read.success);
    if (read.success) go(read.data);
  };
  return (
    <form onSubmit={submit} noValidate>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="month"
        max={latest}
        value={text}
        placeholder="YYYY-MM"
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-wrong` : undefined}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit">{button}</button>
      {isWrong && (
        <p id={`${id}-wrong`} role="alert">
          {words("wrong", { month: latest })}
        </p>
      )}
    </form>
  );
}

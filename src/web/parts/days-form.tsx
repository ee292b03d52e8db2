import { type FormEvent, type ReactNode, useState } from "react";
import { type Day, day as dayText } from "../../../shared/day.ts";
import { fieldText } from "../texts/fields.ts";
import { TextField } from "./form/text-field.tsx";
import { useSession } from "./session.tsx";

/** Days that stand in the form before anybody chose others. */
const usualDays = 90;
const dayMs = 86_400_000;

/** Two days between which something is asked for; a field that holds no day is told, and nothing is asked then. */
export function DaysForm(props: {
  name: string;
  labels: { readonly first: string; readonly last: string; readonly button: string };
  asked: { readonly first: Day; readonly last: Day } | null;
  show: (days: { readonly first: Day; readonly last: Day }) => void;
  children?: ReactNode;
}): ReactNode {
  const { name, labels, asked, show, children } = props;
  const { time, now } = useSession();
  const [first, setFirst] = useState<string>(asked?.first ?? time.dayOf(now() - usualDays * dayMs));
  const [last, setLast] = useState<string>(asked?.last ?? time.dayOf(now()));
  const [isWrong, setWrong] = useState(false);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const [from, to] = [dayText.safeParse(first), dayText.safeParse(last)];
    setWrong(!from.success || !to.success);
    if (from.success && to.success) show({ first: from.data, last: to.data });
  };
  const none = { faults: [] };
  return (
    <form className="on-screen beside" aria-label={name} onSubmit={submit} noValidate>
      {children}
      <TextField {...none} pointer="/first" label={labels.first} type="date" value={first} change={setFirst} />
      <TextField {...none} pointer="/last" label={labels.last} type="date" value={last} change={setLast} />
      {isWrong && <p role="alert">{fieldText("noDay")}</p>}
      <p>
        <button type="submit" className="first">
          {labels.button}
        </button>
      </p>
    </form>
  );
}

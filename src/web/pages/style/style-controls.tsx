import { type ReactNode, useState } from "react";
import { ChoiceField, SelectField, YesNoField } from "../../parts/form/choice-field.tsx";
import { FieldScope } from "../../parts/form/faults.ts";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { Said } from "../../parts/said.tsx";
import { Term } from "../../parts/term.tsx";
import { styleText } from "../../texts/style.ts";
import { faultAt } from "./style-faults.ts";

const pointers = ["/text", "/long", "/time", "/choice", "/yesNo", "/select"] as const;

/** Buttons, fields plain and with a fault, a word that opens its definition, and a table whose figures open. */
export function StyleControls(): ReactNode {
  return (
    <section aria-labelledby="controls">
      <h2 id="controls">{styleText("controls")}</h2>
      <p className="row">
        <button type="button" className="first">
          {styleText("first")}
        </button>
        <button type="button">{styleText("plain")}</button>
        <button type="button" disabled>
          {styleText("off")}
        </button>
        <Term name="patient-day">{styleText("term")}</Term>
      </p>
      <Fields id="plain" faulty={false} />
      <h3>{styleText("wrong")}</h3>
      <Fields id="wrong" faulty />
      <FigureTable />
    </section>
  );
}

function Fields({ id, faulty }: { id: string; faulty: boolean }): ReactNode {
  const [text, setText] = useState("");
  const [time, setTime] = useState("2026-11-20T09:30");
  const [choice, setChoice] = useState<"device" | "tape" | null>("device");
  const [answer, setAnswer] = useState<boolean | null>(null);
  const faults = faulty ? pointers.map(faultAt) : [];
  const choices = [
    { value: "device", label: styleText("choiceFirst") },
    { value: "tape", label: styleText("choiceSecond") },
  ] as const;
  const at = (pointer: (typeof pointers)[number], label: string) => ({ pointer, label, faults });
  return (
    <FieldScope value={`style-${id}`}>
      <div className="style-fields">
        <TextField {...at("/text", styleText("text"))} help={styleText("textHelp")} value={text} change={setText} />
        <LongTextField {...at("/long", styleText("long"))} value={text} change={setText} />
        <TimeField {...at("/time", styleText("time"))} value={time} change={setTime} />
        <ChoiceField {...at("/choice", styleText("choice"))} choices={choices} value={choice} change={setChoice} />
        <YesNoField {...at("/yesNo", styleText("yesNo"))} value={answer} change={setAnswer} />
        <SelectField
          {...at("/select", styleText("select"))}
          choices={choices}
          value={choice}
          change={setChoice}
          empty={styleText("none")}
        />
      </div>
    </FieldScope>
  );
}

function FigureTable(): ReactNode {
  const [isOpen, setOpen] = useState(false);
  return (
    <table className="ledger">
      <caption>{styleText("table")}</caption>
      <thead>
        <tr>
          <th scope="col">{styleText("ward")}</th>
          <th scope="col" className="figure">
            {styleText("figure")}
          </th>
        </tr>
      </thead>
      <tbody>
        <tr className={isOpen ? "open" : undefined}>
          <th scope="row">
            <Said>3E</Said>
          </th>
          <td className="figure">
            <button type="button" className="opens" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
              {styleText("opens")}
              <span className="unseen"> {styleText("opensWords")}</span>
            </button>
          </td>
        </tr>
      </tbody>
    </table>
  );
}

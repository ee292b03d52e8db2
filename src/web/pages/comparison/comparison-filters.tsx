import { type FormEvent, type ReactNode, useState } from "react";
import type { compareWards } from "../../../../shared/api/ward-comparisons.ts";
import { month as monthText } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { goTo } from "../../parts/address.ts";
import { comparisonText as text } from "../../texts/comparison.ts";

type Comparison = OutputOf<typeof compareWards>;

/** Chooses months, type and ward; they go into the address, so that a comparison can be sent and kept. */
export function ComparisonFilters({ answer }: { answer: Comparison }): ReactNode {
  const [isWrong, setWrong] = useState(false);
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const given = new FormData(event.currentTarget);
    const chosen = ["from", "to", "type", "ward"].map((name) => [name, String(given.get(name) ?? "").trim()] as const);
    const months = chosen.slice(0, 2).map(([, value]) => monthText.safeParse(value).success);
    setWrong(months.includes(false));
    if (months.includes(false)) return;
    goTo(`/comparison?${new URLSearchParams(chosen.filter(([, value]) => value !== "").map((pair) => [...pair]))}`);
  };
  return (
    <form className="filters on-screen" aria-label={text("filters")} onSubmit={submit} noValidate>
      <MonthField id="from" label={text("from")} value={answer.from} isWrong={isWrong} />
      <MonthField id="to" label={text("to")} value={answer.to} isWrong={isWrong} />
      <div>
        <label htmlFor="type">{text("type")}</label>
        <select id="type" name="type" defaultValue={answer.type ?? ""}>
          <option value="">{text("everyType")}</option>
          {answer.types.map(({ type, wards: count }) => (
            <option key={type} value={type}>
              {text("typeOf", { type, count })}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="ward">{text("ward")}</label>
        <select id="ward" name="ward" defaultValue={answer.ward ?? ""}>
          <option value="">{text("allWards")}</option>
          {answer.wards.map(({ code, name }) => (
            <option key={code} value={code}>
              {code === name ? code : `${code} ${name}`}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="first">
        {text("show")}
      </button>
      <button type="button" onClick={() => window.print()}>
        {text("print")}
      </button>
      {isWrong && (
        <p id="months-wrong" role="alert">
          {text("wrongMonth", { month: answer.to })}
        </p>
      )}
    </form>
  );
}

function MonthField(props: { id: string; label: string; value: string; isWrong: boolean }): ReactNode {
  const { id, label, value, isWrong } = props;
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={id}
        type="month"
        placeholder="YYYY-MM"
        defaultValue={value}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? "months-wrong" : undefined}
      />
    </div>
  );
}

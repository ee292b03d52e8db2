import type { FormEvent, ReactNode } from "react";
import { compareTwo, type compareWards } from "../../../../shared/api/ward-comparisons.ts";
import { type Month, month as monthText } from "../../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../../shared/endpoint.ts";
import { goTo } from "../../parts/address.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { comparisonText as text } from "../../texts/comparison.ts";
import { TestsOfTwo } from "./tests-of-two.tsx";

type Comparison = OutputOf<typeof compareWards>;
type Asked = InputOf<typeof compareTwo>;
const fields = ["first", "firstFrom", "firstTo", "second", "secondFrom", "secondTo"] as const;

/** Any two wards, or two periods of one, tested against each other; which ones stands in the address. */
export function TwoWards({ answer, question }: { answer: Comparison; question: URLSearchParams }): ReactNode {
  const asked = askedBy(question);
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const given = new FormData(event.currentTarget);
    const next = new URLSearchParams(question);
    for (const field of fields) next.set(field, String(given.get(field) ?? ""));
    goTo(`/comparison?${next}#two`);
  };
  return (
    <section aria-labelledby="two">
      <h2 id="two">{text("two")}</h2>
      <p>{text("twoWhy")}</p>
      <form className="on-screen" onSubmit={submit}>
        <Side name="first" legend={text("first")} answer={answer} asked={asked} other={0} />
        <Side name="second" legend={text("second")} answer={answer} asked={asked} other={1} />
        <button type="submit" className="first">
          {text("test")}
        </button>
      </form>
      {asked && <Tested asked={asked} />}
    </section>
  );
}

function Tested({ asked }: { asked: Asked }): ReactNode {
  const tests = useAnswer(compareTwo, asked);
  return (
    <ShowAnswer asked={tests} what={text("twoWhat")}>
      {(answer) => <TestsOfTwo answer={answer} />}
    </ShowAnswer>
  );
}

/** Both sides as the address names them; null when it does not name them whole. */
function askedBy(question: URLSearchParams): Asked | null {
  const [first, second] = [question.get("first"), question.get("second")];
  const month = (name: string): Month | undefined => monthText.safeParse(question.get(name)).data;
  const [firstFrom, firstTo] = [month("firstFrom"), month("firstTo")];
  const [secondFrom, secondTo] = [month("secondFrom"), month("secondTo")];
  if (!first || !second || !firstFrom || !firstTo || !secondFrom || !secondTo) return null;
  return { first, firstFrom, firstTo, second, secondFrom, secondTo };
}

function Side(props: {
  name: "first" | "second";
  legend: string;
  answer: Comparison;
  asked: Asked | null;
  other: number;
}): ReactNode {
  const { name, legend, answer, asked, other } = props;
  const [from, to] = [`${name}From`, `${name}To`] as const;
  return (
    <fieldset className="side">
      <legend>{legend}</legend>
      <div>
        <label htmlFor={name}>{text("sideWard")}</label>
        <select id={name} name={name} defaultValue={asked?.[name] ?? answer.wards[other]?.code}>
          {answer.wards.map(({ code }) => (
            <option key={code}>{code}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor={from}>{text("sideFrom")}</label>
        <input id={from} name={from} type="month" required defaultValue={asked?.[from] ?? answer.from} />
      </div>
      <div>
        <label htmlFor={to}>{text("sideTo")}</label>
        <input id={to} name={to} type="month" required defaultValue={asked?.[to] ?? answer.to} />
      </div>
    </fieldset>
  );
}

import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { casesText } from "../../texts/case.ts";
import type { CaseInList } from "./case-filter.ts";

/** 14 days around a culture in a small table: ward, catheter, signs that were present, cultures. */
export function Glance({ one: { glance, subject } }: { one: CaseInList }): ReactNode {
  const signs = glance.flatMap(({ day, signs: found }) => found.map((sign) => ({ sign, day })));
  return (
    <>
      <section className="wide" aria-label={casesText("glanceOf", { day: dayWords(subject.day) })}>
        <table className="glance">
          <thead>
            <tr>
              <td />
              {glance.map(({ day }) => (
                <th key={day} scope="col" className={day === subject.day ? "is-day" : undefined}>
                  <abbr title={dayWords(day)}>{Number(day.slice(8))}</abbr>
                </th>
              ))}
            </tr>
          </thead>
          <GlanceRows glance={glance} />
        </table>
      </section>
      <p className="small">
        {signs.length === 0 ? (
          casesText("noSigns")
        ) : (
          <Said>
            {casesText("signsOf", {
              what: signs.map(({ sign, day }) => casesText("signsOn", { sign, day: dayWords(day) })).join("; "),
            })}
          </Said>
        )}
      </p>
    </>
  );
}

function GlanceRows({ glance }: { glance: CaseInList["glance"] }): ReactNode {
  const { wardCode } = useSession();
  const ward = (at: number): string => {
    const wardId = glance[at]?.wardId ?? null;
    const isNew = at === 0 || glance[at - 1]?.wardId !== wardId;
    return wardId !== null && isNew ? wardCode(wardId) : "";
  };
  const rows = [
    { label: casesText("rowWard"), cells: glance.map(({ day }, at) => ({ day, short: ward(at), words: ward(at) })) },
    {
      label: casesText("rowCatheter"),
      cells: glance.map(({ day, catheter }) => ({
        ...{ day, short: catheter ? "▬" : "", words: catheter ? casesText("catheterIn") : "" },
      })),
    },
    {
      label: casesText("rowSigns"),
      cells: glance.map(({ day, signs }) => ({ day, short: "▲".repeat(signs.length), words: signs.join(", ") })),
    },
    {
      label: casesText("rowCultures"),
      cells: glance.map(({ day, urine, blood }) => ({
        ...{ day, short: "◆".repeat(urine) + "■".repeat(blood) },
        words: [...Array(urine).fill(casesText("urineShort")), ...Array(blood).fill(casesText("bloodShort"))].join(
          ", ",
        ),
      })),
    },
  ];
  return (
    <tbody>
      {rows.map(({ label, cells }) => (
        <tr key={label}>
          <th scope="row">{label}</th>
          {cells.map(({ day, short, words }) => (
            <td key={day}>
              <span aria-hidden="true" data-said="">
                {short}
              </span>
              <span className="unseen" data-said="">
                {words}
              </span>
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  );
}

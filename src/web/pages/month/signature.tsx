import type { ReactNode } from "react";
import { readMonthDocument } from "../../../../shared/api/month-document.ts";
import type { readMonthSignatures } from "../../../../shared/api/month-figures.ts";
import type { readMonthGaps } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { roles } from "../../../../shared/vocabulary.ts";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { TakeDocument } from "../../parts/take-document.tsx";
import { instantWords, monthWords } from "../../parts/words.ts";
import { signingText as text } from "../../texts/signing.ts";
import type { AskedSignatures } from "./changed-since-signed.tsx";
import { SignForm } from "./sign-form.tsx";

type Signed = OutputOf<typeof readMonthSignatures>;
type Gap = OutputOf<typeof readMonthGaps>["gaps"][number];

/** What a signature needs to know of the month on the page. */
interface Props {
  readonly month: Month;
  readonly signed: AskedSignatures;
  /** Stands for the figures on the page. */
  readonly seen: string;
  readonly gaps: readonly Gap[];
  /** Reads the figures anew. */
  readonly readAgain: () => void;
}

/** Who signed the month, what has changed since, and the way to sign it. */
export function Signature(props: Props): ReactNode {
  const { month, signed: asked } = props;
  const what = text("what", { month: monthWords(month) });
  return (
    <section aria-labelledby="signature">
      <h2 id="signature">{text("title")}</h2>
      <ShowAnswer asked={asked} what={what}>
        {(signed) => (
          <WithNames what={what}>
            {(nameOf) => (
              <>
                <Signatures {...{ month, signed, nameOf }} />
                <Signing {...props} signed={signed} done={asked.again} />
              </>
            )}
          </WithNames>
        )}
      </ShowAnswer>
    </section>
  );
}

function Signatures({ month, signed, nameOf }: { month: Month; signed: Signed; nameOf: NameOf }): ReactNode {
  const { zone } = useSession().facility;
  if (signed.signatures.length === 0) return <p>{text("open")}</p>;
  return (
    <>
      <ol className="plain-list">
        {signed.signatures.map(({ number, signedBy, signedAt, role, reason, digest }) => {
          const when = instantWords(new Date(signedAt).toISOString(), zone);
          const said = { name: nameOf(signedBy), role: roles[role].replace(/ \(.*$/, "").toLowerCase(), when };
          return (
            <li key={number}>
              <Said>{number === 1 ? text("signedBy", said) : text("amendedBy", { ...said, number: number - 1 })}</Said>
              {reason !== null && (
                <>
                  {" "}
                  <Said>{text("because", { reason })}</Said>
                </>
              )}
              <span className="small checksum"> {text("digest", { digest })}</span>
              <section aria-label={text("documentOf", { number })}>
                <TakeDocument
                  endpoint={readMonthDocument}
                  input={{ month, signature: number }}
                  name={`month-${month}-signed-${number}`}
                />
              </section>
            </li>
          );
        })}
      </ol>
      {signed.differences.length === 0 ? (
        <p>{text("same")}</p>
      ) : (
        <p>
          <a href="#changed-since-signed">{text("changed", { count: signed.differences.length })}</a>
        </p>
      )}
    </>
  );
}

/** What blocks it, or the form; nothing where there is nothing to sign. */
function Signing({
  month,
  seen,
  gaps,
  readAgain,
  signed,
  done,
}: Omit<Props, "signed"> & { signed: Signed; done: () => void }): ReactNode {
  const maySign = useSession().may("sign-month");
  const blocking = gaps.filter(({ blocks }) => blocks);
  const latest = signed.signatures.length;
  if (!maySign) return latest === 0 ? <p>{text("mayNot")}</p> : null;
  if (latest > 0 && signed.differences.length === 0) return null;
  if (blocking.length > 0) {
    return (
      <p className="notice">
        {text("blocked", { count: blocking.length })} <a href="#gaps">{text("toGaps")}</a>
      </p>
    );
  }
  return <SignForm {...{ month, seen, latest, readAgain, done }} />;
}

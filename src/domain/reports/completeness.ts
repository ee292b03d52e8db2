import { type GapKind, gapWords } from "../../../shared/gap-words.ts";
import type { CompletenessItem, MonthReport } from "../../../shared/month-report.ts";
import { gapSentence } from "./gap-sentence.ts";
import type { Gap } from "./gaps.ts";
import type { WardFacts } from "./month-facts.ts";

/** What was missing from a month or doubtful in it, as a report holds it, in the order of the gaps. */
export function completenessOf(
  gaps: readonly Gap[],
  wards: readonly Pick<WardFacts, "wardId" | "code">[],
): CompletenessItem[] {
  return gaps.map((gap) => ({
    kind: gap.kind,
    ward: wards.find(({ wardId }) => wardId === gap.wardId)?.code ?? null,
    count: gap.count,
    sentence: gapSentence(gap),
    lines: (gap.held?.lines ?? []).map(({ importId, file, line, wards: touched, dated, reason, by, at }) => ({
      ...{ importId, file, line, dated, reason, by },
      wards: touched && [...touched],
      at: at === null ? null : new Date(at).toISOString(),
    })),
  }));
}

/** In place of free text, for people who may not see every patient: it can name one. */
export const withheldReason = "Reason shown to infection prevention only";

/** The same without what people wrote of dropped lines. */
export function withoutReasons(completeness: MonthReport["completeness"]): MonthReport["completeness"] {
  if (completeness === null) return null;
  const withheld = (reason: string | null) => (reason === null ? null : withheldReason);
  return completeness.map((item) => ({
    ...item,
    lines: item.lines.map((line) => ({ ...line, reason: withheld(line.reason) })),
  }));
}

/** The codes of some wards, and of all. */
export interface CodesWithin {
  readonly own: ReadonlySet<string>;
  readonly known: ReadonlySet<string>;
}

/**
 * Lines as far as they touch some wards. A code that no ward has is as good as none: it may be a misspelling of one of
 * them, so its line may touch any.
 */
export function linesWithin<Line extends { readonly wards: readonly string[] | null }>(
  lines: readonly Line[],
  { own, known }: CodesWithin,
): (Line & { readonly wards: string[] | null })[] {
  return lines.flatMap((line): (Line & { readonly wards: string[] | null })[] => {
    if (line.wards === null || !line.wards.some((code) => known.has(code))) return [{ ...line, wards: null }];
    const wards = line.wards.filter((code) => own.has(code));
    return wards.length === 0 ? [] : [{ ...line, wards }];
  });
}

/** The same as far as some wards are touched. Lines of no known ward may touch any. */
export function completenessWithin(items: readonly CompletenessItem[], codes: CodesWithin): CompletenessItem[] {
  return items.flatMap((item) => {
    if (item.ward !== null) return codes.own.has(item.ward) ? [item] : [];
    if (item.lines.length === 0) return [item];
    const lines = linesWithin(item.lines, codes);
    if (lines.length === 0) return [];
    const count = lines.length;
    return [{ ...item, count, lines, sentence: sentenceOf(item.kind, { ...item, count, lines }) }];
  });
}

function sentenceOf(kind: string, { count, lines, sentence }: CompletenessItem): string {
  if (!(kind in gapWords)) return sentence;
  const wards = [...new Set(lines.flatMap((line) => line.wards ?? []))].sort();
  const held = lines.map((line) => ({ ...line, state: "refused" as const, at: null }));
  return gapSentence({ kind: kind as GapKind, count, held: { lines: held, wards, imports: [] } });
}

/** The items that no figure shows: a change of them is a difference to what was signed. */
export function signedItems(completeness: MonthReport["completeness"]): MonthReport["completeness"] {
  return completeness === null ? null : completeness.filter(({ kind }) => isSigned(kind));
}

function isSigned(kind: string): boolean {
  return kind in gapWords && "signed" in gapWords[kind as GapKind];
}

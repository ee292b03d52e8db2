import type { Determination, Hinge, Step } from "../criteria/index.ts";

/** The codes of wards, by number. */
export type WardCodes = ReadonlyMap<number, string>;

/** A sentence of a determination, which names wards by number, with the codes of the units. */
export function withWardCodes(sentence: string, codes: WardCodes): string {
  return sentence.replaceAll(/\bward (\d+)\b/g, (said, number) => {
    const code = codes.get(Number(number));
    return code === undefined ? said : `unit ${code}`;
  });
}

/** A determination with the codes of wards in all of its sentences. */
export function determinationWithCodes(determination: Determination, codes: WardCodes): Determination {
  const told = (text: string | null) => (text === null ? null : withWardCodes(text, codes));
  const hinge = (one: Hinge): Hinge => ({ ...one, otherAnswer: withWardCodes(one.otherAnswer, codes) });
  const step = (one: Step): Step => ({
    ...one,
    sentence: withWardCodes(one.sentence, codes),
    nearest: told(one.nearest),
    lookUp: told(one.lookUp),
  });
  const { otherReading, hinges, derivation } = determination;
  return {
    ...determination,
    otherReading: told(otherReading),
    hinges: (hinges ?? []).map(hinge),
    derivation: derivation.map(step),
  };
}

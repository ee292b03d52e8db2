import naughty from "big-list-of-naughty-strings/blns.json" with { type: "json" };

// Source: the Big List of Naughty Strings (Max Woolf), as packaged in big-list-of-naughty-strings. What follows it is ours.
const texts: readonly string[] = [
  ...naughty,
  "é in one character, e\u0301 in two",
  "Å, A\u030a, \u212b",
  "'; DROP TABLE patient; --",
  "\u202eturned around",
  "line one\nline two",
  "tab\there",
  "the character 0: \0",
  "half a character: \ud83d",
  "😀".repeat(20),
  "👩🏽‍⚕️ and 🏳️‍🌈",
  "\ufffd\uffff\ufdd0",
  "x".repeat(10_000),
  '{"$gt":""}',
  '=HYPERLINK("http://127.0.0.1")',
];

/** Every text once. */
export const naughtyStrings: readonly string[] = [...new Set(texts)];

/** A field of free text behind the door. */
export interface TextField {
  /** Sends a text in the field: the status of the answer, and a name for what was stored when it was taken. */
  send(text: string): Promise<{ readonly status: number; readonly stored: string | null }>;
  /** What the door then tells of all that was stored, by those names. */
  read(): Promise<ReadonlyMap<string, string | null>>;
}

/**
 * Sends every naughty text, and tells what went wrong: a text has to come back as it was, but for the white space around
 * it, or has to be refused with 422, or with 400 when no JSON can carry it. Also tells how many were taken.
 */
export async function sendNaughtyStrings(field: TextField): Promise<{ troubles: string[]; taken: number }> {
  const sent = new Map<string, string>();
  const troubles: string[] = [];
  for (const text of naughtyStrings) {
    const { status, stored } = await field.send(text);
    if (stored !== null) sent.set(stored, text);
    const expected = cannotBeSent(text) ? 400 : 422;
    if (stored === null && status !== expected) troubles.push(`${JSON.stringify(text)} is answered with ${status}`);
  }
  const kept = await field.read();
  for (const [stored, text] of sent)
    if (kept.get(stored) !== text.trim())
      troubles.push(`${JSON.stringify(text)} became ${JSON.stringify(kept.get(stored))}`);
  return { troubles, taken: sent.size };
}

/** The character 0, and halves of characters, are refused before any field is looked at. */
function cannotBeSent(text: string): boolean {
  return text.includes("\0") || Buffer.from(text).toString() !== text;
}

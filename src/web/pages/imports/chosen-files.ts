import { importMost } from "../../../../shared/import-words.ts";
import type { FieldFault } from "../../parts/form/faults.ts";
import { importsText } from "../../texts/imports.ts";

/** A file with its text. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

const megabyte = 1024 * 1024;
/** What stands around the texts in a request, and what JSON makes of line ends and quotes, takes some of the room. */
export const roomForTexts = importMost.bytes * 0.9;

/** Bytes in megabytes, with one digit behind the point. */
export function megabytes(bytes: number): string {
  return (bytes / megabyte).toFixed(1);
}

/**
 * Reads files that a person chose, or says why they cannot be sent: too many, too large together, no text. Bytes that
 * are no text are told here, because what a browser makes of them would no longer show that it was damaged.
 */
export async function readChosen(files: readonly File[]): Promise<{ files: TextFile[] } | { faults: FieldFault[] }> {
  if (files.length > importMost.files)
    return { faults: [fault("tooMany", { detail: importsText("tooMany", { most: importMost.files }) })] };
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  if (bytes > roomForTexts) {
    const sizes = { size: megabytes(bytes), most: megabytes(roomForTexts) };
    return { faults: [fault("tooLarge", { detail: importsText("tooLarge", sizes) })] };
  }
  const read = await Promise.all(files.map(async (file) => ({ name: file.name, text: await textOf(file) })));
  const faults = read
    .filter(({ text }) => text === null)
    .map(({ name }, i) => fault("notText", { detail: importsText("notText", { name }), place: i }));
  return faults.length > 0 ? { faults } : { files: read.map(({ name, text }) => ({ name, text: text ?? "" })) };
}

function fault(kind: "tooMany" | "tooLarge" | "notText", said: { detail: string; place?: number }): FieldFault {
  const { detail, place } = said;
  const pointer = place === undefined ? "/files" : `/files/${place}`;
  return { code: "field-unreadable", pointer, detail, remedy: importsText(`${kind}Remedy`) };
}

/** The text of a file in UTF-8, or in UTF-16 with its mark; null when it is in neither. */
async function textOf(file: File): Promise<string | null> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const marks = [
    { first: 0xff, second: 0xfe, encoding: "utf-16le" },
    { first: 0xfe, second: 0xff, encoding: "utf-16be" },
  ];
  const marked = marks.find(({ first, second }) => bytes[0] === first && bytes[1] === second);
  try {
    const text = new TextDecoder(marked?.encoding ?? "utf-8", { fatal: true }).decode(bytes);
    // Workbooks and other packed files can be read as text by chance, but no text holds this character.
    return text.includes("\u0000") ? null : text;
  } catch {
    return null;
  }
}

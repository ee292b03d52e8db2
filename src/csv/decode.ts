import { refuse } from "../../shared/problems.ts";
import { signatureBytes, signatureOf } from "./signature.ts";

/** Text is handed on in blocks of at least this many characters, so that the work on each is worth its overhead. */
const blockCharacters = 65_536;
/** Larger pieces are cut, so that a source held in memory is not turned into text all at once. */
const pieceBytes = 65_536;

/**
 * The text of a file, in blocks, without its byte order mark. UTF-8 is read with or without a mark, UTF-16 of either
 * byte order with one. Bytes that are no character become U+FFFD, which no value may hold: so every such place is
 * refused by line and column, and the lines without one are still read.
 * Refuses renamed workbooks and other files that are not text (`csv-not-text`). No bytes give no blocks.
 */
export async function* decodeBlocks(source: AsyncIterable<Uint8Array>): AsyncGenerator<string, void, undefined> {
  const blocks = new Blocks();
  for await (const chunk of source) {
    for (let at = 0; at < chunk.length; at += pieceBytes) {
      const block = blocks.add(chunk.subarray(at, at + pieceBytes));
      if (block !== null) yield block;
    }
  }
  const rest = blocks.end();
  if (rest !== "") yield rest;
}

class Blocks {
  #head = new Uint8Array(0);
  #decoder: TextDecoder | null = null;
  #text = "";
  #isFirst = true;

  /** Takes bytes; returns a block when there is enough text for one. */
  add(bytes: Uint8Array): string | null {
    if (this.#decoder !== null) {
      this.#text += this.#decoder.decode(bytes, { stream: true });
    } else {
      this.#head = Buffer.concat([this.#head, bytes]);
      if (this.#head.length >= signatureBytes) this.#begin();
    }
    return this.#text.length < blockCharacters ? null : this.#take();
  }

  /** The last block; empty when there is no text left. */
  end(): string {
    const decoder = this.#decoder ?? this.#begin();
    this.#text += decoder.decode();
    return this.#take();
  }

  #begin(): TextDecoder {
    const what = signatureOf(this.#head);
    if (what !== null) return refuse("csv-not-text", what);
    this.#decoder = new TextDecoder(encodingOf(this.#head));
    this.#text = this.#decoder.decode(this.#head, { stream: true });
    return this.#decoder;
  }

  #take(): string {
    const text = this.#text;
    this.#text = "";
    // A zero character further on is one damaged place, refused there; at the beginning it shows the kind of the file.
    if (this.#isFirst && text.includes("\0")) {
      return refuse("csv-not-text", "It holds zero bytes, as pictures, workbooks and unmarked UTF-16 text do.");
    }
    this.#isFirst = false;
    return text;
  }
}

/** Byte order marks: The Unicode Standard, chapter 2.6, table 2-4 (from memory). */
function encodingOf(head: Uint8Array): "utf-16le" | "utf-16be" | "utf-8" {
  if (head[0] === 0xff && head[1] === 0xfe) return "utf-16le";
  if (head[0] === 0xfe && head[1] === 0xff) return "utf-16be";
  return "utf-8";
}

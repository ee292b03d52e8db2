import type { ReactNode } from "react";
import { Said } from "./said.tsx";

/** Sentences of the server under a heading, such as cautions and sources. */
export function Sentences(props: { id: string; title: string; sentences: readonly string[] }): ReactNode {
  const { id, title, sentences } = props;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>
            <Said>{sentence}</Said>
          </li>
        ))}
      </ul>
    </section>
  );
}

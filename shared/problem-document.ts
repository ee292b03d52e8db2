import { z } from "zod";
import { type Fault, Problem, type ProblemCode, problems } from "./problems.ts";
import { signedChanges } from "./signed-changes.ts";

const problemCode = z.enum(Object.keys(problems) as ProblemCode[]);

/** The media type of a refusal. */
export const problemMediaType = "application/problem+json";

/** A refusal as it is sent. Form: RFC 9457, Problem Details for HTTP APIs; `code` and `errors` are our extensions. */
export const problemDocument = z
  .strictObject({
    type: z.string().describe("A name of this kind of problem that never changes"),
    title: z.string().describe("The kind of problem in words"),
    status: z.int(),
    detail: z.string().describe("What is wrong this time"),
    instance: z.string().describe("The number of this request, for whoever looks after the server"),
    code: problemCode,
    errors: z
      .array(
        z.strictObject({
          pointer: z.string().describe("JSON pointer of the field at fault; empty when the whole request is meant"),
          code: problemCode,
          detail: z.string(),
          remedy: z.string().describe("How to mend it"),
          other: z.string().optional().describe("The other record that stands in the way"),
        }),
      )
      .describe("Everything that was found wrong"),
    current: z.record(z.string(), z.unknown()).optional().describe("The entry as it is by now, when it was changed"),
    signed: signedChanges.optional().describe("What it would change of signed months"),
  })
  .meta({ id: "Problem" });
export type ProblemDocument = z.infer<typeof problemDocument>;

/** The document of a problem; `instance` is the number of the request that met it. */
export function documentOf(problem: Problem, instance: string): ProblemDocument {
  const { status, title } = problems[problem.code];
  return {
    type: `urn:dwell-ledger:problem:${problem.code}`,
    title,
    status,
    detail: problem.message,
    instance,
    code: problem.code,
    errors: problem.faults.map(({ code, pointer, detail, other }) => ({
      pointer,
      code,
      detail,
      remedy: problems[code].remedy,
      ...(other === undefined ? {} : { other }),
    })),
    ...(problem.current === undefined ? {} : { current: { ...problem.current } }),
    ...(problem.signed === undefined ? {} : { signed: problem.signed }),
  };
}

/** A problem that a server answered with, with the number of the request. */
export class AnsweredProblem extends Problem {
  readonly document: ProblemDocument;

  constructor(document: ProblemDocument) {
    const [first, ...more] = document.errors as Fault[];
    super(first ?? { code: document.code, pointer: "", detail: document.detail }, ...more);
    this.document = document;
    if (document.current) this.current = document.current;
    if (document.signed) this.signed = document.signed;
  }
}

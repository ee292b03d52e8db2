import { z } from "zod";
import type { Permission } from "./permissions.ts";
import type { ProblemCode } from "./problems.ts";

/** Named parts of an input, each with the schema of its value. */
export type Shape = Readonly<Record<string, z.ZodType>>;

/** Records of a patient, each with the name under which an input gives its number. */
export const recordIds = {
  patient: "patientId",
  stay: "stayId",
  "ward-stay": "wardStayId",
  catheter: "catheterId",
  note: "noteId",
  specimen: "specimenId",
  sign: "signId",
  finding: "findingId",
  case: "caseId",
} as const;
export type RecordKind = keyof typeof recordIds;

/**
 * Which wards a call touches. `none`: no ward's record. `ward`: the one that the input names as `wardId`. A kind of
 * record: the wards of the patient whose record the input names. `import`: the files that the input names as `importId`,
 * which are the facility's. Hidden and absent ones answer alike. `facility`: all
 * that the person may see; the use case is told which those are.
 */
export type WardScope = "none" | "ward" | "facility" | "import" | RecordKind;

/**
 * What a call does to the record. `reads`: nothing. `creates`: something new; sent twice under one Idempotency-Key it
 * is done once. `updates`: an entry whose version the caller saw and sends as If-Match.
 */
export type Effect = "reads" | "creates" | "updates";

/** One thing that the API can be asked: all that doors, clients and documents know about it. */
export interface Endpoint<
  Params extends Shape = Shape,
  Query extends Shape = Shape,
  Body extends Shape = Shape,
  Output extends z.ZodType = z.ZodType,
  Does extends Effect = Effect,
> {
  readonly method: "GET" | "POST" | "PUT";
  readonly effect: Does;
  /** Below the base of the API; parameters in braces: `/months/{month}`. */
  readonly path: `/${string}`;
  /** One line for the published description, as an order: "Read a month". */
  readonly summary: string;
  readonly permission: Permission;
  readonly wards: WardScope;
  /**
   * How the answer is sent. `sheet`: as JSON, or its `sheet` alone as CSV for who asks for `text/csv`. `document`: as JSON,
   * or its `document` as a file of the type that is asked for: PDF, XLSX or CSV.
   */
  readonly reply: "json" | "sheet" | "document";
  /** What a body may hold at most, where that is more than usual. */
  readonly bodyBytes?: number;
  /** A read whose cost grows with the facility: it is worked out beside the requests of others. */
  readonly heavy?: true;
  readonly params: z.ZodObject<Params, z.core.$strict>;
  readonly query: z.ZodObject<Query, z.core.$strict>;
  readonly body: z.ZodObject<Body, z.core.$strict>;
  readonly output: Output;
  /** The refusals of its own; those that any call may meet (no permission, unreadable input) are understood. */
  readonly errors: readonly ProblemCode[];
}

/** An endpoint as it is written down: parts of the input that it does not have are left out. */
interface EndpointText<
  Params extends Shape,
  Query extends Shape,
  Body extends Shape,
  Output extends z.ZodType,
  Does extends Effect,
> extends Omit<Endpoint, "params" | "query" | "body" | "output" | "effect"> {
  /** Left out by what only reads. */
  readonly effect?: Does;
  readonly params?: Params;
  readonly query?: Query;
  readonly body?: Body;
  readonly output: Output;
}

type None = Record<never, z.ZodType>;

/**
 * Makes an endpoint of its description. All parts are strict: an unknown field is refused, not dropped.
 * No name may stand in two parts, because a use case receives them as one input. Throws an Error when one does, when path
 * and parameters differ, or when a ward is meant and none is named: all are bugs.
 */
export function endpoint<
  Output extends z.ZodType,
  Params extends Shape = None,
  Query extends Shape = None,
  Body extends Shape = None,
  Does extends Effect = "reads",
>(text: EndpointText<Params, Query, Body, Output, Does>): Endpoint<Params, Query, Body, Output, Does> {
  const { params = {} as Params, query = {} as Query, body = {} as Body, effect = "reads" as Does } = text;
  const names = [params, query, body].flatMap((part) => Object.keys(part));
  const inPath = [...text.path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
  if (new Set(names).size !== names.length) throw new Error(`${text.path} has a name in two parts of its input`);
  if (inPath.join() !== Object.keys(params).join()) throw new Error(`${text.path} differs from its parameters`);
  const named = namedBy(text.wards);
  if (named && !names.includes(named)) throw new Error(`${text.path} does not name its ${named}`);
  return {
    ...text,
    effect,
    params: z.strictObject(params),
    query: z.strictObject(query),
    body: z.strictObject(body),
  };
}

/** The part of an input that names what a ward scope needs; null when it needs none. */
export function namedBy(wards: WardScope): string | null {
  if (wards === "none" || wards === "facility") return null;
  if (wards === "import") return "importId";
  return wards === "ward" ? "wardId" : recordIds[wards];
}

type ValuesOf<Part extends Shape> = keyof Part extends never ? unknown : z.output<z.ZodObject<Part, z.core.$strict>>;

/** An update names the version of the entry that its caller saw. */
export interface Seen {
  readonly seenVersion: number;
}

/** What a call takes and a use case receives: parameters, query and body as one object. */
export type InputOf<E> =
  E extends Endpoint<infer P, infer Q, infer B, infer _, infer Does>
    ? ValuesOf<P> &
        ValuesOf<Q> &
        ValuesOf<B> &
        ("updates" extends Does ? (Does extends "updates" ? Seen : unknown) : unknown)
    : never;

/** What a call answers with. */
export type OutputOf<E extends Pick<Endpoint, "output">> = z.output<E["output"]>;

/** Whether the endpoint takes a body. */
export function takesBody(one: Pick<Endpoint, "body">): boolean {
  return Object.keys(one.body.shape).length > 0;
}

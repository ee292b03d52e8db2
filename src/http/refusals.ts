import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { apiBase } from "../../shared/api-base.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { documentOf, problemMediaType } from "../../shared/problem-document.ts";
import { Problem, type ProblemCode } from "../../shared/problems.ts";

/** Fastify's own refusals that have a code of ours; its other ones of status 4xx are requests that cannot be read. */
const frameworkCodes: Readonly<Record<string, ProblemCode>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: "request-too-large",
  FST_ERR_CTP_INVALID_MEDIA_TYPE: "media-type-unknown",
};

const details: Readonly<Partial<Record<ProblemCode, string>>> = {
  "request-too-large": "The body is larger than is taken here.",
  "media-type-unknown": "Only JSON is read here.",
  "request-unreadable": "The address or the body of the request cannot be read.",
};

/** Sends a problem as a document; the text is made here so that nothing can go wrong in checking it once more. */
function answer(reply: FastifyReply, problem: Problem): FastifyReply {
  const document = documentOf(problem, reply.request.id);
  return reply.code(document.status).type(problemMediaType).send(JSON.stringify(document));
}

/** Answers what a handler threw. What is no {@link Problem} is a bug: it is logged, and the reply says nothing of it. */
export function answerError(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (error instanceof Problem) return answer(reply, error);
  const { code = "", statusCode = 500 } = error instanceof Error ? (error as Partial<FastifyError>) : {};
  if (statusCode >= 400 && statusCode < 500) {
    const known = frameworkCodes[code] ?? "request-unreadable";
    return answer(reply, new Problem({ code: known, pointer: "", detail: details[known] ?? "" }));
  }
  request.log.error({ err: error }, "a request failed");
  const detail = "The request could not be carried out because of a fault in the program.";
  return answer(reply, new Problem({ code: "internal-error", pointer: "", detail }));
}

/** The methods that endpoints have at a path; empty when nothing is there. */
function methodsAt(endpoints: readonly Endpoint[]): (path: string) => string[] {
  const known = endpoints.map(({ method, path }) => ({
    methods: method === "GET" ? ["GET", "HEAD"] : [method],
    pattern: new RegExp(`^${apiBase}${path.replaceAll(/\{\w+\}/g, "[^/]+")}$`),
  }));
  return (path) => [...new Set(known.filter((one) => one.pattern.test(path)).flatMap((one) => one.methods))];
}

/**
 * Answers addresses at which nothing is: 405 where another method would do, the page for addresses of the page
 * (`sendPage`, when there is one), else 404.
 */
export function refuseUnknownAddresses(
  app: FastifyInstance,
  endpoints: readonly Endpoint[],
  sendPage: ((reply: FastifyReply) => FastifyReply) | undefined,
): void {
  const methods = methodsAt(endpoints);
  app.setNotFoundHandler((request, reply) => {
    const path = pathOf(request);
    const allowed = methods(path);
    if (allowed.length > 0) {
      reply.header("allow", allowed.join(", "));
      const detail = `This address answers ${allowed.join(" and ")} only.`;
      return answer(reply, new Problem({ code: "method-not-allowed", pointer: "", detail }));
    }
    if (sendPage && isPage(request.method, path)) return sendPage(reply);
    return answer(reply, new Problem({ code: "address-unknown", pointer: "", detail: "Nothing answers here." }));
  });
}

function pathOf(request: FastifyRequest): string {
  return request.url.split("?", 1)[0] ?? "";
}

/** Addresses of the page have no file ending and lie outside what programs call. */
function isPage(method: string, path: string): boolean {
  const isFile = (path.split("/").at(-1) ?? "").includes(".");
  return (method === "GET" || method === "HEAD") && !isFile && !/^\/(api|docs|health|assets)(\/|$)/.test(path);
}

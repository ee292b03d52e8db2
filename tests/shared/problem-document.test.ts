import { describe, expect, it } from "vitest";
import { AnsweredProblem, documentOf, problemDocument } from "../../shared/problem-document.ts";
import { Problem, problems } from "../../shared/problems.ts";

const stale = () =>
  new Problem(
    { code: "stale-version", pointer: "/seenVersion", detail: "Version 3 is the one that stands." },
    { code: "stay-overlaps", pointer: "", detail: "Two stays overlap.", other: "stay 12" },
  );

describe("the document of a problem", () => {
  // The members type, title, status, detail and instance: RFC 9457, section 3.1.
  it("says what is wrong in the form of RFC 9457, each fault with its remedy", () => {
    expect(documentOf(stale(), "request-7")).toEqual({
      type: "urn:dwell-ledger:problem:stale-version",
      title: problems["stale-version"].title,
      status: 412,
      detail: "Version 3 is the one that stands.",
      instance: "request-7",
      code: "stale-version",
      errors: [
        {
          pointer: "/seenVersion",
          code: "stale-version",
          detail: "Version 3 is the one that stands.",
          remedy: problems["stale-version"].remedy,
        },
        {
          pointer: "",
          code: "stay-overlaps",
          detail: "Two stays overlap.",
          remedy: problems["stay-overlaps"].remedy,
          other: "stay 12",
        },
      ],
    });
  });

  it("carries the state by now through sending and reading, when there is one", () => {
    const problem = stale();
    problem.current = { catheterId: 4, version: 3, removedAt: null, record: { attempts: 1 } };
    const document = problemDocument.parse(JSON.parse(JSON.stringify(documentOf(problem, "request-7"))));
    expect(document.current).toEqual({ catheterId: 4, version: 3, removedAt: null, record: { attempts: 1 } });
    const answered = new AnsweredProblem(document);
    expect(answered.current).toEqual(document.current);
    expect([answered.code, answered.message, answered.faults.length]).toEqual([
      "stale-version",
      "Version 3 is the one that stands.",
      2,
    ]);
    expect(documentOf(answered, "request-8")).toEqual({ ...document, instance: "request-8" });
  });

  it("has no state when nothing was changed meanwhile", () => {
    const document = documentOf(stale(), "request-7");
    expect(document).not.toHaveProperty("current");
    expect(new AnsweredProblem(document).current).toBeUndefined();
  });

  it.each([[], "text", 3, null])("is not read when its state is %j", (current) => {
    expect(problemDocument.safeParse({ ...documentOf(stale(), "request-7"), current }).success).toBe(false);
  });
});

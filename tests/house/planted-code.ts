import { clockAndChance } from "./clock-and-chance.ts";
import { coveredElsewhere } from "./covered-elsewhere.ts";
import { environmentAndConsole } from "./environment.ts";
import { importDirections } from "./import-directions.ts";
import { mirroredTests } from "./mirrored-tests.ts";
import type { PlantedRule } from "./planted.ts";
import { problemCodes } from "./problem-codes.ts";
import { fileSizes, functionSizes } from "./sizes.ts";

const longFunction = `export function long() {\n${"  count();\n".repeat(60)}}\n`;
const shortFunction = `export function short() {\n${"  count();\n".repeat(58)}}\n`;

const sizeRules: PlantedRule[] = [
  {
    title: "no file has over 400 lines",
    rule: fileSizes,
    kept: { "src/domain/a.ts": "one;\n".repeat(400) },
    broken: [{ files: { "shared/a.ts": "one;\n".repeat(401) }, says: "401 lines, over 400" }],
  },
  {
    title: "no function has over 60 lines, callbacks of the test runner apart",
    rule: functionSizes,
    kept: {
      "src/domain/a.ts": shortFunction,
      "tests/a.test.ts": `describe.each([1])("a", () => {\n${"  count();\n".repeat(80)}});`,
    },
    broken: [
      { files: { "src/domain/a.ts": longFunction }, says: "62 lines, over 60" },
      { files: { "tests/a.test.ts": longFunction }, says: "62 lines, over 60" },
      { files: { "src/a.ts": `const a = list.map(() => {\n${"  count();\n".repeat(60)}});` }, says: "62 lines" },
    ],
  },
];

/** Each import direction, with a file that breaks it. */
const brokenImports: [path: string, text: string, says: string][] = [
  [
    "src/domain/a.ts",
    'import { openStore } from "../store/open-store.ts";',
    "src/domain may not import from src/store",
  ],
  ["src/domain/a.ts", 'import { readFileSync } from "node:fs";', "may not import the package node:fs"],
  ["src/store/a.ts", 'export { admit } from "../usecases/admit.ts";', "imports go down only"],
  ["src/usecases/a.ts", 'import { Prisma } from "@prisma/client";', "may not import the package @prisma/client"],
  ["src/usecases/a.ts", 'const fastify = await import("fastify");', "may not import the package fastify"],
  ["src/csv/a.ts", 'import type { Server } from "../http/server.ts";', "src/csv may not import from src/http"],
  ["src/http/a.ts", 'import { openStore } from "../store/open-store.ts";', "src/http may not import from src/store"],
  ["src/http/a.ts", 'import { readConfig } from "../config.ts";', "src/http may not import from src/config.ts"],
  ["src/web/a.tsx", 'type Day = import("../domain/days/day-number.ts").DayNumber;', "src/web may not import"],
  ["src/web/a.tsx", "const page = await import(name);", "write the path as plain text"],
  ["shared/a.ts", 'import { addDays } from "date-fns";', "shared may not import the package date-fns"],
  ["src/helpful/a.ts", 'import { day } from "../../shared/day.ts";', "stands in no room"],
];

const roomRules: PlantedRule[] = [
  {
    title: "imports go down the house only",
    rule: importDirections,
    kept: {
      "src/main.ts": 'import { anything } from "fastify";',
      "src/http/a.ts":
        'import fastify from "fastify";\nimport type { Config } from "../config.ts";\nimport type { Store } from "../store/store.ts";\nimport { a } from "../csv/a.ts";',
      "src/domain/days/a.ts": 'import { b } from "../counting/b.ts";\nimport { day } from "../../../shared/day.ts";',
      "src/store/a.ts":
        'import { PrismaPg } from "@prisma/adapter-pg";\nimport { a } from "./generated/sqlite/client.ts";',
    },
    broken: brokenImports.map(([path, text, says]) => ({ files: { [path]: text }, says })),
  },
  {
    title: "nothing reads the clock or rolls dice outside src/main.ts",
    rule: clockAndChance,
    kept: { "src/main.ts": "const now = Date.now();", "src/domain/a.ts": "const at = new Date(instant);" },
    broken: [
      { files: { "src/domain/a.ts": "const now = Date.now();" }, says: "uses Date.now" },
      { files: { "src/usecases/a.ts": "const now = new Date();" }, says: "uses the current Date" },
      { files: { "src/store/a.ts": "const id = Math.random();" }, says: "uses Math.random" },
      { files: { "src/http/a.ts": "const start = performance.now();" }, says: "uses performance.now" },
    ],
  },
  {
    title: "only src/config.ts reads the environment and nothing in src writes to the console",
    rule: environmentAndConsole,
    kept: {
      "src/config.ts": "const { env } = process;\nconst port = process.env.PORT;",
      "src/main.ts": "const config = readConfig(process.env);",
    },
    broken: [
      { files: { "src/main.ts": "const port = process.env.PORT;" }, says: "reads the environment" },
      { files: { "src/csv/a.ts": "const { env } = process;" }, says: "reads the environment" },
      { files: { "src/http/a.ts": 'import { env } from "node:process";' }, says: "reads the environment" },
      { files: { "src/commands/a.ts": 'console.log("done");' }, says: "writes to the console" },
    ],
  },
];

const coverageRules: PlantedRule[] = [
  {
    title: "every problem code is answered with somewhere",
    rule: problemCodes,
    kept: {
      "shared/problems.ts": 'const problems = { "day-unreadable": {} };',
      "src/a.ts": 'refuse("day-unreadable");',
    },
    broken: [
      {
        files: { "shared/problems.ts": 'const problems = { "day-unreadable": {} };' },
        says: "day-unreadable, which nothing",
      },
    ],
  },
  {
    title: "every file of src that exports a function has its test",
    rule: (tree) => mirroredTests(tree, coveredElsewhere),
    plantedRule: (tree) => mirroredTests(tree, { "src/b.ts": "tests/all.test.ts" }),
    kept: {
      "src/a.ts": "export const a = () => 1;",
      "tests/a.test.ts": "",
      "src/b.ts": "export function b() {}",
      "tests/all.test.ts": "",
      "src/c.ts": "export const most = 3;",
    },
    broken: [
      {
        files: { "src/b.ts": "export class B {}", "tests/all.test.ts": "", "src/d.tsx": "export function D() {}" },
        says: "write tests/d.test.ts",
      },
      { files: { "src/b.ts": "export function b() {}" }, says: "names tests/all.test.ts, which does not exist" },
      {
        files: { "src/b.ts": "export function b() {}", "tests/b.test.ts": "" },
        says: "needs no entry in covered-elsewhere.ts",
      },
    ],
  },
];

/** The rules about code. */
export const codeRules: readonly PlantedRule[] = [...roomRules, ...sizeRules, ...coverageRules];

/** What one room of the house may import. */
export interface Room {
  /** The rooms below it. Its own files are always allowed. */
  rooms: readonly string[];
  /** Packages, or the beginning of their names when it ends with `*`. */
  packages: readonly string[];
  /** Rooms of which it may name types only: a door hands the store on to a use case and calls nothing in it. */
  typesOf?: readonly string[];
}

/**
 * The house, from the bottom up: imports go down only. `main.ts` wires everything and has no entry here.
 * Node's own modules stand under packages, as `node:`.
 */
export const rooms: Readonly<Record<string, Room>> = {
  shared: { rooms: [], packages: ["zod"] },
  "src/charts": { rooms: ["shared"], packages: [] },
  "src/domain": { rooms: ["shared"], packages: ["d3-*", "@stdlib/*", "canonicalize"] },
  "src/store": {
    rooms: ["src/domain", "shared"],
    packages: ["@prisma/*", "better-sqlite3", "pg", "zod", "node:*"],
  },
  "src/usecases": { rooms: ["src/store", "src/domain", "src/charts", "shared"], packages: ["zod", "node:crypto"] },
  "src/config.ts": { rooms: ["shared"], packages: ["zod", "node:*"] },
  "src/csv": {
    rooms: ["src/usecases", "src/domain", "shared"],
    packages: ["csv-parse", "csv-stringify", "zod", "node:*"],
    typesOf: ["src/store"],
  },
  "src/demo": { rooms: ["src/usecases", "src/domain", "shared"], packages: ["pure-rand"], typesOf: ["src/store"] },
  "src/hl7": { rooms: ["src/usecases", "src/domain", "shared"], packages: ["zod", "node:*"], typesOf: ["src/store"] },
  "src/fhir": { rooms: ["src/usecases", "src/domain", "shared"], packages: ["zod", "node:*"], typesOf: ["src/store"] },
  "src/documents": {
    rooms: ["src/charts", "shared"],
    packages: ["write-excel-file/node", "write-excel-file", "pdfkit", "playwright-core", "node:*"],
  },
  "src/http": {
    rooms: ["src/csv", "src/documents", "src/usecases", "src/domain", "src/charts", "shared"],
    packages: ["fastify", "fastify-*", "@fastify/*", "jsonc-parser", "pino", "zod", "node:*"],
    typesOf: ["src/config.ts", "src/store"],
  },
  "src/commands": {
    rooms: ["src/http", "src/csv", "src/demo", "src/usecases", "src/domain", "src/charts", "shared"],
    packages: ["csv-stringify", "zod", "node:*"],
    typesOf: ["src/config.ts", "src/store"],
  },
  "src/web": { rooms: ["src/charts", "shared"], packages: ["react", "react-dom", "i18next"] },
};

/** The room a file stands in, or undefined when the house has no such room. */
export function roomOf(path: string): string | undefined {
  return Object.keys(rooms).find((room) => path === room || path.startsWith(`${room}/`));
}

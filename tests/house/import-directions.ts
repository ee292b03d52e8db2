import { posix } from "node:path";
import ts from "typescript";
import { type Room, roomOf, rooms } from "./rooms.ts";
import { type Finding, lineOf, nodesOf, type RuleResult, sourcesIn, type Tree, together } from "./tree.ts";

/** They wire the parts, each for one kind of thread. */
const wiring = new Set(["src/main.ts", "src/heavy.ts"]);

/** Every import goes down the house, to a room or package that {@link rooms} allows. Counts imports. */
export function importDirections(tree: Tree): RuleResult {
  return together(
    sourcesIn(tree, /^(src|shared)\/.*\.tsx?$/).map((source) => {
      if (wiring.has(source.fileName)) return { checked: 0, findings: [] };
      const imports = nodesOf(source).flatMap(importIn);
      return { checked: imports.length, findings: imports.flatMap((found) => judge(source.fileName, found)) };
    }),
  );
}

interface Import {
  /** What is imported, or undefined when it is worked out at run time. */
  target: string | undefined;
  typesOnly: boolean;
  line: number;
}

function importIn(node: ts.Node): Import[] {
  if (ts.isImportDeclaration(node)) {
    return [{ ...targetOf(node.moduleSpecifier), typesOnly: namesTypesOnly(node.importClause) }];
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
    return [{ ...targetOf(node.moduleSpecifier), typesOnly: node.isTypeOnly }];
  }
  if (ts.isImportTypeNode(node)) {
    return [{ ...targetOf(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node), typesOnly: true }];
  }
  if (ts.isExternalModuleReference(node)) return [{ ...targetOf(node.expression), typesOnly: false }];
  const called = ts.isCallExpression(node) ? node.expression : undefined;
  const isImport = called?.kind === ts.SyntaxKind.ImportKeyword || called?.getText() === "require";
  if (!isImport || !ts.isCallExpression(node)) return [];
  return [{ ...targetOf(node.arguments[0] ?? node), typesOnly: false }];
}

function namesTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.isTypeOnly) return true;
  const named = clause.namedBindings;
  return (
    !clause.name && named !== undefined && ts.isNamedImports(named) && named.elements.every((one) => one.isTypeOnly)
  );
}

function targetOf(node: ts.Node): { target: string | undefined; line: number } {
  return { target: ts.isStringLiteralLike(node) ? node.text : undefined, line: lineOf(node) };
}

function judge(path: string, { target, typesOnly, line }: Import): Finding[] {
  const finding = (message: string): Finding[] => [{ path, line, message }];
  const name = roomOf(path);
  const room = name === undefined ? undefined : rooms[name];
  if (!name || !room)
    return finding("stands in no room of the house; move it, or add the room to tests/house/rooms.ts");
  if (target === undefined) return finding("imports what cannot be read here; write the path as plain text");
  if (!target.startsWith(".")) {
    if (allowsPackage(room, target)) return [];
    return finding(`${name} may not import the package ${target}; it may import ${room.packages.join(", ")}`);
  }
  const to = roomOf(posix.join(posix.dirname(path), target));
  if (to === name || (to && room.rooms.includes(to))) return [];
  if (to && typesOnly && room.typesOf?.includes(to)) return [];
  return finding(
    `${name} may not import from ${to ?? target}: imports go down only (${room.rooms.join(", ") || "nothing below"}); pass the value in from above`,
  );
}

function allowsPackage(room: Room, target: string): boolean {
  return room.packages.some((allowed) =>
    allowed.endsWith("*")
      ? target.startsWith(allowed.slice(0, -1))
      : target === allowed || target.startsWith(`${allowed}/`),
  );
}

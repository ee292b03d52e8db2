import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { PrismaPg } from "@prisma/adapter-pg";
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from "@prisma/driver-adapter-utils";
import * as glue from "@prisma/schema-engine-wasm/schema_engine_bg";

const { SchemaEngine } = glue;
export type Provider = "sqlite" | "postgresql";

let loaded: Promise<void> | undefined;

/** The engine's package leaves the loading of its WebAssembly to the caller. */
function loadEngine(): Promise<void> {
  loaded ??= (async () => {
    const entry = createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm/schema_engine_bg");
    const { instance } = await WebAssembly.instantiate(await readFile(entry.replace(/\.js$/, ".wasm")), {
      "./schema_engine_bg.js": glue as unknown as WebAssembly.ModuleImports,
    });
    (glue as unknown as { __wbg_set_wasm(e: WebAssembly.Exports): void }).__wbg_set_wasm(instance.exports);
    (instance.exports as unknown as { __wbindgen_start(): void }).__wbindgen_start();
  })();
  return loaded;
}

/** prisma/schema.prisma with the provider of one database stamped into its datasource. */
export async function schemaFor(provider: Provider): Promise<string> {
  const text = await readFile(new URL("../prisma/schema.prisma", import.meta.url), "utf8");
  return text.replace('provider = "sqlite"', `provider = "${provider}"`);
}

/**
 * The SQL that turns the database behind the adapter into what prisma/schema.prisma says; empty when they agree.
 * A fresh engine for each call, since a used one keeps its connections.
 */
export async function schemaDiff(provider: Provider, adapter: SqlMigrationAwareDriverAdapterFactory): Promise<string> {
  await loadEngine();
  const schema = await schemaFor(provider);
  const files = [{ path: "schema.prisma", content: schema }];
  const engine = await SchemaEngine.new(
    { datamodels: [["schema.prisma", schema]] },
    () => {},
    bindMigrationAwareSqlAdapterFactory(adapter),
  );
  try {
    const result = await engine.diff({
      from: { tag: "schemaDatasource", files, configDir: "." },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: null,
      filters: { externalTables: [], externalEnums: [] },
    });
    const sql = result.stdout ?? "";
    return sql.includes("This is an empty migration") ? "" : sql;
  } finally {
    engine.free();
  }
}

const oneByteChar = 18;
const text = 25;

/**
 * PostgreSQL as the engine can read it: its catalogue has columns of the one-byte type "char", which the driver
 * adapter refuses. They are letters, so they pass as text.
 */
export class CataloguePostgres extends PrismaPg {
  override async connect(): ReturnType<PrismaPg["connect"]> {
    const adapter = await super.connect();
    const driver = adapter as unknown as { performIO(query: unknown): Promise<{ fields: { dataTypeID: number }[] }> };
    const ask = driver.performIO.bind(driver);
    driver.performIO = async (query) => {
      const answer = await ask(query);
      for (const field of answer.fields) if (field.dataTypeID === oneByteChar) field.dataTypeID = text;
      return answer;
    };
    return adapter;
  }
}

import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { styleText } from "../../texts/style.ts";

const sizes = ["text-h1", "text-h2", "text-h3", "text-lead", "text", "text-small", "text-figure"] as const;
const spaces = ["space-1", "space-2", "space-3", "space-4", "space-5", "space-6"] as const;
const colors = ["petrol", "rust", "ochre", "plum", "moss", "slate"] as const;
const surfaces = ["ground", "raised", "shade"] as const;

/** The scale of sizes and spaces, and the colors, each as the pages use it. */
export function StyleMeasures(): ReactNode {
  return (
    <section aria-labelledby="measures">
      <h2 id="measures">{styleText("measures")}</h2>
      <h3>{styleText("scale")}</h3>
      {sizes.map((size) => (
        <p key={size} style={{ fontSize: `var(--${size})` }}>
          <Said>{size}</Said> {styleText("sample")}
        </p>
      ))}
      <h3>{styleText("space")}</h3>
      {spaces.map((space) => (
        <p key={space} className="row">
          <span className="space-shown" style={{ width: `var(--${space})` }} /> <Said>{space}</Said>
        </p>
      ))}
      <Colors />
    </section>
  );
}

function Colors(): ReactNode {
  return (
    <>
      <h3>{styleText("colors")}</h3>
      <p className="row">
        {colors.map((name) => (
          <span key={name} data-pair="words" className={`state tone-${name}`}>
            {styleText("colorSample", { name })}
          </span>
        ))}
      </p>
      <h3>{styleText("surfaces")}</h3>
      {surfaces.map((ground) => (
        <p key={ground} className="row surface-shown" style={{ background: `var(--${ground})` }}>
          {(["ink", "soft", ...colors] as const).map((name) => (
            <span key={name} data-pair="words" style={{ color: `var(--${name})`, background: `var(--${ground})` }}>
              <Said>{name}</Said>
            </span>
          ))}
          <span data-pair="edge" className="edge-shown" style={{ background: `var(--${ground})` }}>
            {styleText("edgeSample")}
          </span>
        </p>
      ))}
    </>
  );
}

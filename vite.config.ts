import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/** Builds the pages of src/web into dist/web, from where the server hands them out. */
export default defineConfig({
  root: "src/web",
  base: "/",
  plugins: [react()],
  build: { outDir: "../../dist/web", emptyOutDir: true },
});

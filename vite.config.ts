import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

/** The two files of the first load: the small one that asks the server, and the page with all that it needs at once. */
const firstLoad = [
  { name: "start", test: /src\/web\/start\.ts$/, priority: 2 },
  { name: "main", test: /src\/web\/main\.tsx$/, priority: 1 },
];

/** Builds the pages of src/web into dist/web, from where the server hands them out. */
export default defineConfig({
  root: "src/web",
  base: "/",
  plugins: [react(), loadMainAtOnce()],
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups: firstLoad } } },
  },
});

/** The first script asks the server before it loads the page itself; the browser shall fetch both at the same time. */
function loadMainAtOnce(): Plugin {
  return {
    name: "load-main-at-once",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(_html, { bundle = {} }) {
        const main = Object.values(bundle).filter(({ type, name }) => type === "chunk" && name === "main");
        if (main.length === 0) throw new Error("The build has no main.tsx");
        return main.map(({ fileName }) => ({
          tag: "link",
          attrs: { rel: "modulepreload", crossorigin: true, href: `/${fileName}` },
        }));
      },
    },
  };
}

import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { language } from "./texts/language.ts";

const root = document.getElementById("root");
if (!root) throw new Error("The page has no place for its content");
document.documentElement.lang = language;
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

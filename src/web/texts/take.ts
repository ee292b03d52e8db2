import { catalogue } from "./catalogue.ts";

export const takeText = catalogue("take", {
  pdf: "Take along as PDF",
  xlsx: "As a workbook (XLSX)",
  csv: "Figures as CSV",
  making: "The file is being made; a PDF takes a few seconds.",
  failed: "The file could not be had. Try again in a moment.",
});

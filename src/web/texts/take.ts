import { catalogue } from "./catalogue.ts";

export const takeText = catalogue("take", {
  pdf: "Export as PDF",
  xlsx: "Export as workbook (XLSX)",
  csv: "Figures as CSV",
  making: "The file is being made; a PDF takes a few seconds.",
  failed: "The file could not be made. Try again in a moment.",
});

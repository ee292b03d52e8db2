/** Hands a file to the browser, which saves it where the person keeps such files. */
export function saveFile(name: string, file: Blob): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

/** A promise to wait for, and the call that ends the waiting. */
export function gate(): { readonly opened: Promise<void>; readonly open: () => void } {
  let open = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { opened, open };
}

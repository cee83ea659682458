/** Once the browser has shown what was drawn; at once where nobody sees the page. */
export function frameShown(): Promise<void> {
  if (document.hidden) return Promise.resolve();
  return new Promise((go) => {
    // A task that was put off from within the frame's callback comes after the frame has been painted.
    requestAnimationFrame(() => setTimeout(go));
  });
}

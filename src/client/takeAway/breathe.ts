/**
 * Lets the page draw and answer before the work goes on. A message rather than a timer, which a browser holds back for a second at
 * a time in a page that stands behind another.
 */
export function breathe(): Promise<void> {
  return new Promise((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      go();
    };
    port2.postMessage(null);
  });
}

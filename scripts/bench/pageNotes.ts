/** A moment, milliseconds since 1970 with their fraction, and what happened. */
export interface Note {
  readonly at: number;
  readonly what: string;
}

declare global {
  // What notePage leaves in the page, and noteWorker in the report worker.
  var benchNotes: Note[];
}

/** Goes to the end of the report worker's script: notes what is asked of DuckDB's own worker and when it has answered. */
function noteWorker(): void {
  self.benchNotes = [];
  const note = (what: string): void => {
    self.benchNotes.push({ at: performance.timeOrigin + performance.now(), what });
  };
  const RealWorker = self.Worker;
  self.Worker = class extends RealWorker {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      note("engine worker made");
      const asked = new Map<number, string>();
      const post = this.postMessage.bind(this);
      this.postMessage = (message: { messageId: number; type: string }, transfer: unknown) => {
        asked.set(message.messageId, message.type);
        note(`asked ${message.type}`);
        post(message, transfer as Transferable[]);
      };
      this.addEventListener("message", ({ data }) => note(`answered ${asked.get(data.requestId)}`));
    }
  };
}

/**
 * Goes into the page before its own scripts: notes the use of a control, what the report worker says, and each frame shown
 * after the page's body has changed. Lines that only tell of progress do not count as a change.
 *
 * @param workerNotes source of {@link noteWorker}, added to the worker's script since nothing else reaches inside a worker
 */
function notePage(workerNotes: string): void {
  window.benchNotes = [];
  const note = (what: string, at = performance.now()): void => {
    window.benchNotes.push({ at: performance.timeOrigin + at, what });
  };
  for (const kind of ["input", "change"] as const) {
    window.addEventListener(
      kind,
      ({ target }) => {
        if (target instanceof HTMLElement && target.dataset.control) note(`used ${target.dataset.control}`);
      },
      { capture: true },
    );
  }
  const RealBlob = window.Blob;
  window.Blob = class extends RealBlob {
    constructor(parts: BlobPart[] = [], options?: BlobPropertyBag) {
      const startsWorker = typeof parts[0] === "string" && parts[0].startsWith("import ");
      super(startsWorker ? [...parts, `\n(${workerNotes})();`] : parts, options);
    }
  };
  const RealWorker = window.Worker;
  window.Worker = class extends RealWorker {
    constructor(address: string | URL, options?: WorkerOptions) {
      super(address, options);
      note("report worker made");
      this.addEventListener("message", ({ data }) => {
        if (data.kind !== "progress") note(`worker says ${data.kind}`);
      });
    }
  };
  document.addEventListener("DOMContentLoaded", () => {
    const body = document.getElementById("body");
    if (body === null) return;
    const isProgress = (node: Node): boolean => {
      const element = node instanceof Element ? node : node.parentElement;
      return element?.closest('[data-slot="progress"], [data-action="cancel"]') != null;
    };
    new MutationObserver((changes) => {
      if (changes.every(({ target }) => isProgress(target))) return;
      // A message posted from within the frame's callback comes once the frame has been laid out and painted.
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => note("frame shown");
        port2.postMessage(null);
      });
    }).observe(body, { subtree: true, childList: true, characterData: true, attributes: true });
  });
}

/** The script to put into a page, as text. */
export const notePageScript = `(${notePage})(${JSON.stringify(String(noteWorker))})`;

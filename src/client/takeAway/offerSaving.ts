/**
 * Puts the buttons that save a figure under the figures of a built page, just as a live one draws them (`bodies/Figure.tsx`):
 * without a script they could do nothing, and a page need not carry them.
 */
export function offerSaving(main: HTMLElement): void {
  for (const figure of main.querySelectorAll("figure.figure")) {
    const line = document.createElement("p");
    line.className = "take needs-scripting";
    const word = document.createElement("span");
    word.textContent = "Save";
    const buttons = ["csv", "svg", "png"].map((form) => {
      const button = document.createElement("button");
      button.type = "button";
      button.dataset.take = form;
      button.textContent = form.toUpperCase();
      return button;
    });
    line.append(word, ...buttons);
    figure.append(line);
  }
}

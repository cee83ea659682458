import type { ChosenFile } from "./chosenFile.ts";
import { chosenFiles, droppedFiles } from "./droppedFiles.ts";

/** What a reader can do about their own logs. */
export interface DeskActions {
  choose(files: readonly ChosenFile[]): void;
  chooseNone(): void;
  /** Chooses again what was put away. */
  rechoose(): void;
  /** @param fields of the form: the house, and whether the logs are to be kept */
  read(fields: FormData): void;
  /** Keeps what is shown, or keeps it no longer. */
  turnKeeping(): void;
  /** Keeps again what gave way when other logs were kept. */
  keepFormer(): void;
  goBack(): void;
  showAgain(): void;
  saveProblems(): void;
  /** Saves the columns.toml by which the logs were read. */
  saveMatches(): void;
  /** A field of the house was changed. */
  settingsChanged(): void;
  fail(error: unknown): void;
}

const fileFields = (main: HTMLElement): readonly HTMLInputElement[] => [
  ...main.querySelectorAll<HTMLInputElement>('input[type="file"][data-own]'),
];

/** The fields that say what a house.toml would. */
export const houseForm = (main: HTMLElement): HTMLFormElement | null =>
  main.querySelector<HTMLFormElement>('form[data-form="own-logs"]');

/** Listens on the page and on what stands above it. @param takesFiles whether files may be chosen now */
export function listenForDesk(main: HTMLElement, takesFiles: () => boolean, actions: DeskActions): void {
  const pressed: Readonly<Record<string, () => void>> = {
    none() {
      for (const field of fileFields(main)) field.value = "";
      actions.chooseNone();
    },
    rechoose: actions.rechoose,
    keep: actions.turnKeeping,
    "keep-former": actions.keepFormer,
    back: actions.goBack,
    again: actions.showAgain,
    problems: actions.saveProblems,
    matches: actions.saveMatches,
  };
  main.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLInputElement && target.type === "file" && target.dataset.own !== undefined) {
      actions.choose(chosenFiles(target.files));
    } else if (houseForm(main)?.contains(target as Node | null) === true) actions.settingsChanged();
  });
  main.addEventListener("submit", (event) => {
    if (!(event.target instanceof HTMLFormElement) || event.target.dataset.form !== "own-logs") return;
    event.preventDefault();
    actions.read(new FormData(event.target));
  });
  document.addEventListener("click", ({ target }) => {
    const button = target instanceof Element ? target.closest<HTMLElement>("button[data-own]") : null;
    pressed[button?.dataset.own ?? ""]?.();
  });
  const takesDrop = (): boolean => takesFiles() && main.querySelector('[data-own="drop"]') !== null;
  document.addEventListener("dragover", (event) => {
    if (takesDrop()) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    if (!takesDrop() || event.dataTransfer === null) return;
    event.preventDefault();
    droppedFiles(event.dataTransfer).then(actions.choose, actions.fail);
  });
  // Chosen before anybody listened.
  queueMicrotask(() => {
    for (const field of fileFields(main)) actions.choose(chosenFiles(field.files));
  });
}

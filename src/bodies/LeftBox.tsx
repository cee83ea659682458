import { useState } from "preact/hooks";

interface LeftBoxProps {
  readonly id: string;
  readonly type: "text" | "number";
  readonly min?: string;
  readonly max?: string;
  /** Where the names offered while typing stand. */
  readonly list?: string;
  readonly autoComplete?: "off";
  readonly autoCapitalize?: "off";
  readonly disabled?: boolean;
  readonly value: string | number;
  /** Told what was typed once the box is left, or Enter pressed in it. */
  readonly taken: (text: string) => void;
}

/**
 * A box whose text counts only when the box is left. Until then the text is the box's own: the page may be drawn again while
 * somebody types (a check ends, a folder is found again), and drawing the old value would wipe out what they typed.
 */
export function LeftBox({ value, taken, ...others }: LeftBoxProps) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      {...others}
      value={typed ?? value}
      onInput={({ currentTarget }) => setTyped(currentTarget.value)}
      onChange={({ currentTarget }) => {
        setTyped(null);
        taken(currentTarget.value);
      }}
    />
  );
}

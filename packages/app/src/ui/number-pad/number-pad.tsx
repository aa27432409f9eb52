import type { VNode } from 'preact';

interface NumberPadProps {
  /** Whether fractions of an inch are typed. */
  readonly fractions: boolean;
  /** Whether numbers below 0 are typed. */
  readonly negative?: boolean;
  /** Is told the key: a character, or `back`. */
  readonly onPress: (key: string) => void;
}

/** Keys whose sign says too little. */
const NAMES: Readonly<Record<string, string>> = { ' ': 'space', '-': 'minus' };

/** Keys for numbers, each large enough for a glove. */
export function NumberPad({ fractions, negative = false, onPress }: NumberPadProps): VNode {
  const last = ['.', '0', ...(fractions ? ['/', ' '] : []), ...(negative ? ['-'] : [])];
  return (
    <fieldset class="number-pad">
      <legend class="unseen">Number keys</legend>
      {['7', '8', '9', '4', '5', '6', '1', '2', '3', ...last].map((key) => (
        <button
          key={key}
          type="button"
          aria-label={NAMES[key] ?? key}
          // the box that is filled in keeps the cursor
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onPress(key)}
        >
          {key === ' ' ? '␣' : key}
        </button>
      ))}
      <button
        type="button"
        aria-label="Delete the last character"
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => onPress('back')}
      >
        ⌫
      </button>
    </fieldset>
  );
}

import type { VNode } from 'preact';

interface NumberPadProps {
  /** Whether fractions of an inch are typed. */
  readonly fractions: boolean;
  /** Is told the key: a character, or `back`. */
  readonly onPress: (key: string) => void;
}

/** Keys for numbers, each large enough for a glove. */
export function NumberPad({ fractions, onPress }: NumberPadProps): VNode {
  const last = fractions ? ['.', '0', '/', ' '] : ['.', '0'];
  return (
    <fieldset class="number-pad">
      <legend class="unseen">Number keys</legend>
      {['7', '8', '9', '4', '5', '6', '1', '2', '3', ...last].map((key) => (
        <button
          key={key}
          type="button"
          aria-label={key === ' ' ? 'space' : key}
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

import { lengthUnit } from '../../../core/words/numbers/units.ts';
import { useUnits } from '../../state/useUnits.ts';
import { NumberField, type NumberFieldProps } from './fields.tsx';

interface LengthFieldProps
  extends Omit<NumberFieldProps, 'value' | 'unit' | 'kept' | 'min' | 'max' | 'onCommit' | 'placeholder'> {
  readonly valueM: number | null;
  /** What holds where nothing is typed. */
  readonly placeholderM?: number;
  readonly minM?: number;
  readonly maxM?: number;
  readonly onCommitM: (lengthM: number | null) => void;
}

/** A length in the property's units; metres outside. */
export function LengthField({ valueM, placeholderM, minM = 0, maxM = 1e6, onCommitM, ...rest }: LengthFieldProps) {
  const { name, lengthM } = lengthUnit(useUnits());
  return (
    <NumberField
      {...rest}
      {...(placeholderM === undefined ? {} : { placeholder: placeholderM })}
      unit={name}
      kept={{ unit: 'm', perUnit: lengthM }}
      value={valueM}
      min={minM}
      max={maxM}
      onCommit={onCommitM}
    />
  );
}

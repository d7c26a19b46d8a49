import { useUnits } from '../../state/useUnits.ts';
import { NumberField, type NumberFieldProps } from './fields.tsx';

const mPerFoot = 0.3048;

interface LengthFieldProps
  extends Omit<NumberFieldProps, 'value' | 'unit' | 'min' | 'max' | 'onCommit' | 'placeholder'> {
  readonly valueM: number | null;
  /** What holds where nothing is typed. */
  readonly placeholderM?: number;
  readonly minM?: number;
  readonly maxM?: number;
  readonly onCommitM: (lengthM: number | null) => void;
}

/** A length in the property's units; metres outside. */
export function LengthField({ valueM, placeholderM, minM = 0, maxM = 1e6, onCommitM, ...rest }: LengthFieldProps) {
  const mPerUnit = useUnits() === 'imperial' ? mPerFoot : 1;
  return (
    <NumberField
      {...rest}
      {...(placeholderM === undefined ? {} : { placeholder: (placeholderM / mPerUnit).toFixed(2) })}
      unit={mPerUnit === 1 ? 'm' : 'ft'}
      value={valueM === null ? null : valueM / mPerUnit}
      min={minM / mPerUnit}
      max={maxM / mPerUnit}
      onCommit={(value) => onCommitM(value === null ? null : value * mPerUnit)}
    />
  );
}

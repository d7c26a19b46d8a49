import { useApp } from '../state/appState.ts';
import { type CommandId, commandOf, keyText, labelOf } from './commands.ts';

/** A button for a command, with its key in the tip; disabled with the reason while it can't be done. */
export function CommandButton({
  id,
  label,
  className,
}: {
  readonly id: CommandId;
  readonly label?: string;
  readonly className?: string;
}) {
  const command = commandOf(id);
  const why = useApp((state) => command.whyNot(state));
  const tip = [label ? labelOf(command) : null, command.key && keyText(command.key), why].filter(Boolean).join(' · ');
  return (
    <button type="button" className={className} title={tip} disabled={why !== null} onClick={command.run}>
      {label ?? labelOf(command)}
    </button>
  );
}

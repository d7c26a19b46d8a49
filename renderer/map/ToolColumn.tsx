import { plainWords } from '../../core/words/figures.ts';
import type { ShownTool, ToolName } from './mapTypes.ts';

interface ToolColumnProps {
  readonly tools: readonly ShownTool[];
  readonly tool: ToolName;
  readonly onTool: (tool: ToolName) => void;
}

/** The tools of a workspace, at the map's left edge; none where there is only one. */
export function ToolColumn({ tools, tool, onTool }: ToolColumnProps) {
  if (tools.length < 2) return null;
  return (
    <section className="map-tools" aria-label={plainWords().window.map.toolsTitle}>
      {tools.map(({ name, label, key, purpose }) => (
        <button
          key={name}
          type="button"
          className="map-tool"
          aria-pressed={name === tool}
          aria-keyshortcuts={key}
          title={purpose}
          onClick={() => onTool(name)}
        >
          <kbd>{key}</kbd>
          <span>{label}</span>
        </button>
      ))}
    </section>
  );
}

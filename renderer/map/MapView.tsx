import 'leaflet/dist/leaflet.css';
import '../styles/map.css';
import { type Ref, useEffect, useImperativeHandle, useLayoutEffect, useRef, useState } from 'react';
import { plainWords } from '../../core/words/figures.ts';
import { createMapController, type MapController } from './createMapController.ts';
import { type MapEvents, type MapHandle, type MapInput, type ToolName, toolsFor } from './mapTypes.ts';
import { ToolColumn } from './ToolColumn.tsx';
import { ViewButtons } from './ViewButtons.tsx';
import { VoltageLegend } from './VoltageLegend.tsx';

export interface MapViewProps {
  readonly input: MapInput;
  readonly events: MapEvents;
  readonly ref?: Ref<MapHandle>;
}

/** The map with its tools. It fills its parent, which must have a size. React only mounts it and hands changes on. */
export function MapView({ input, events, ref }: MapViewProps) {
  const stage = useRef<HTMLDivElement>(null);
  const statusBar = useRef<HTMLDivElement>(null);
  const strip = useRef<HTMLDivElement>(null);
  const controller = useRef<MapController | null>(null);
  const latest = useRef({ input, events });
  useLayoutEffect(() => {
    latest.current = { input, events };
  });
  const [tool, setTool] = useState<ToolName>('choose');

  useLayoutEffect(() => {
    const now = () => latest.current.events;
    const elements = { stage: stage.current!, statusBar: { line: statusBar.current!, strip: strip.current! } };
    const made = createMapController(elements, latest.current.input, {
      onChoose: (ids, additive) => now().onChoose(ids, additive),
      onPoint: (id) => now().onPoint(id),
      onEdit: (edit) => now().onEdit(edit),
      newId: (kind) => now().newId(kind),
      onFinding: (finding) => now().onFinding?.(finding),
      onRefused: (text) => now().onRefused?.(text),
      onCursor: (cursor) => now().onCursor?.(cursor),
      onDig: (dig) => now().onDig?.(dig),
      onPlacing: (step) => now().onPlacing?.(step),
      onToolChange(name) {
        setTool(name);
        now().onToolChange?.(name);
      },
    });
    controller.current = made;
    setTool(made.tool());
    return () => {
      controller.current = null;
      made.remove();
    };
  }, []);

  useEffect(() => controller.current?.update(input), [input]);

  useImperativeHandle(
    ref,
    () => ({
      fit: () => controller.current?.fit(),
      zoomTo: (id) => controller.current?.zoomTo(id),
      goTo: (lonLat) => controller.current?.goTo(lonLat),
      askForPlace: () => controller.current?.askForPlace(),
      extent: () => controller.current?.extent() ?? { centre: [0, 0], widthM: 1, heightM: 1 },
      setTool: (name) => controller.current?.setTool(name),
      tool: () => controller.current?.tool() ?? 'choose',
      focus: () => controller.current?.focus(),
    }),
    [],
  );

  const words = plainWords().window.map;
  return (
    <section className="map" aria-label={words.property}>
      <div className="map-sheet">
        <ToolColumn tools={toolsFor(input)} tool={tool} onTool={(name) => controller.current?.setTool(name)} />
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is worked with arrow keys and Enter */}
        <div ref={stage} className="map-stage" role="application" aria-label={words.drawing} tabIndex={0} />
        {input.voltage && <VoltageLegend voltage={input.voltage} theme={input.theme} />}
        <div ref={strip} className="map-strip" />
        <ViewButtons onZoom={(steps) => controller.current?.zoomBy(steps)} onFit={() => controller.current?.fit()} />
      </div>
      <div ref={statusBar} className="map-status-bar" />
    </section>
  );
}

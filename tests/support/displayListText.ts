import type { Item, PaperPoint, Stroke } from '../../core/drawing/displayList.ts';
import { tracePoints } from '../../core/drawing/traces.ts';

/** A display list as text that people can review: one item a line, figures rounded to `decimals`. */
export function displayListText(items: readonly Item[], decimals: number): string {
  return `${items.flatMap((item) => linesOf(item, decimals)).join('\n')}\n`;
}

function linesOf(item: Item, decimals: number): string[] {
  const figure = (value: number) => String(Number(value.toFixed(decimals)) + 0);
  const point = ([x, y]: PaperPoint) => `${figure(x)},${figure(y)}`;
  const path = (points: readonly PaperPoint[]) => points.map(point).join(' ');
  const strokeText = (stroke: Stroke | null) =>
    stroke
      ? [
          `stroke ${Number(stroke.width.toFixed(2))} ${stroke.ink}`,
          stroke.dash ? `dash ${stroke.dash.map((each) => Number(each.toFixed(2))).join('/')}` : '',
          stroke.cap === 'round' ? 'round' : '',
        ]
      : [];
  const line = (...parts: readonly string[]) => parts.filter((part) => part !== '').join(' ');
  switch (item.kind) {
    case 'path':
      return [
        line(
          item.closed ? 'polygon' : 'line',
          item.fill ? `fill ${item.fill}` : '',
          ...strokeText(item.stroke),
          '|',
          item.paths.map(path).join(' | '),
        ),
      ];
    case 'traces':
      return [line('traces', ...strokeText(item.stroke), '|', tracePoints(item).map(path).join(' | '))];
    case 'circles':
      return [
        line(
          `circle ${figure(item.radius)}`,
          item.fill ? `fill ${item.fill}` : '',
          ...strokeText(item.stroke),
          '|',
          path(item.centres),
        ),
      ];
    case 'text':
      return [
        line(
          `text "${item.text}" ${item.font} ${Number(item.size.toFixed(2))} ${item.align} ${item.ink}`,
          item.rotationDeg === 0 ? '' : `turned ${Number(item.rotationDeg.toFixed(1))}`,
          item.halo > 0 ? `halo ${Number(item.halo.toFixed(2))} ${item.haloInk}` : '',
          '|',
          point(item.at),
        ),
      ];
    case 'clip':
      return [
        `clip ${item.box.map(figure).join(',')}`,
        ...item.items.flatMap((inner) => linesOf(inner, decimals).map((each) => `  ${each}`)),
      ];
    case 'tagged':
      return [
        line('tagged', item.role),
        ...item.items.flatMap((inner) => linesOf(inner, decimals).map((each) => `  ${each}`)),
      ];
    case 'link':
      return [`link ${item.anchor} ${item.box.map(figure).join(',')}`];
    case 'anchor':
      return [`anchor ${item.name} ${point(item.at)}`];
    case 'image':
      return [`image ${item.box.map(figure).join(',')} "${item.alternative}"`];
  }
}

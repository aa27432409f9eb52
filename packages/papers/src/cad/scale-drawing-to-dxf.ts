import { shownNumber } from '@furrow/engine';
import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { dxfText } from './dxf-text.ts';
import { LAYER_STYLES } from './layer-style.ts';
import type { ScaleDrawing, ScaleItem, ScaleLayer } from './scale-drawing.ts';

const ANCHORS = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

/** Writes a drawing as DXF (AC1021) at full size, one layer per meaning; millimetres, or inches for a shop that works in them. */
export function scaleDrawingToDxf(drawing: ScaleDrawing): string {
  const { units, items, textHeight } = drawing;
  const perMetre = shownNumber(1, 'length', units);
  const writer = new DxfWriter();
  writer.setUnits(units === 'inch' ? Units.Inches : Units.Millimeters);
  writer.setVariable('$MEASUREMENT', { 70: units === 'inch' ? 0 : 1 });
  for (const layer of new Set(items.map((item) => item.layer))) {
    writer.addLayer(layer, Colors.White, lineTypeOf(writer, layer, textHeight * perMetre));
  }
  for (const item of items) addItem(writer, item, perMetre);
  return writer.stringify();
}

/** Dashes of a line type are positive, its gaps negative lengths. */
function lineTypeOf(writer: DxfWriter, layer: ScaleLayer, textHeight: number): string {
  const { dashes } = LAYER_STYLES[layer];
  if (dashes === undefined) return 'Continuous';
  const name = `${layer}_LINE`;
  const lengths = dashes.map((part, index) => exact((index % 2 === 0 ? 1 : -1) * part * textHeight));
  writer.addLType(name, 'dashes', lengths);
  return name;
}

function addItem(writer: DxfWriter, item: ScaleItem, perMetre: number): void {
  const layerName = item.layer;
  if (item.kind === 'line') {
    writer.addLWPolyline(
      item.points.map(({ x, y }) => ({ point: point2d(exact(x * perMetre), exact(y * perMetre)) })),
      { layerName, flags: item.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
    );
    return;
  }
  const at = point3d(exact(item.at.x * perMetre), exact(item.at.y * perMetre), 0);
  writer.addText(at, exact(item.height * perMetre), dxfText(item.text), {
    layerName,
    // a text that is not anchored at its start stands at its second point
    ...(item.anchor === 'start'
      ? {}
      : {
          horizontalAlignment: ANCHORS[item.anchor],
          verticalAlignment: TextVerticalAlignment.BaseLine,
          secondAlignmentPoint: at,
        }),
  });
}

/** Billionths of a unit: the value itself, without the noise of binary fractions. */
function exact(value: number): number {
  return Math.round(value * 1e9) / 1e9 + 0;
}

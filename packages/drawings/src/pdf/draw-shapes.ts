// Shapes on a PDF page: the same paths and text that the SVG has, in the same points.
import { PRINT_INKS } from '../scene/pens.ts';
import type { PathShape, Shape, TextShape } from '../scene/shape.ts';
import { textRuns } from './font-cuts.ts';

export function drawShapes(document: PDFKit.PDFDocument, shapes: readonly Shape[]): void {
  for (const shape of shapes) {
    if (shape.kind === 'path') drawPath(document, shape);
    else drawText(document, shape);
  }
}

function drawPath(document: PDFKit.PDFDocument, { commands, pen, fill }: PathShape): void {
  if (commands.length === 0 || (pen === null && fill === null)) return;
  for (const command of commands) {
    switch (command[0]) {
      case 'M':
        document.moveTo(command[1], command[2]);
        break;
      case 'L':
        document.lineTo(command[1], command[2]);
        break;
      case 'C':
        document.bezierCurveTo(command[1], command[2], command[3], command[4], command[5], command[6]);
        break;
      case 'Z':
        document.closePath();
    }
  }
  if (pen !== null) {
    document.lineWidth(pen.widthPt);
    const [dash, space] = pen.dashPt;
    if (dash === undefined) document.undash();
    else document.dash(dash, { space: space ?? dash });
    if (pen.dashPt.length > 2) writeDashes(document, pen.dashPt);
  }
  if (pen !== null && fill !== null) {
    document.fillAndStroke(PRINT_INKS[fill], PRINT_INKS[pen.ink], 'even-odd');
  } else if (fill !== null) {
    document.fill(PRINT_INKS[fill], 'even-odd');
  } else if (pen !== null) {
    document.stroke(PRINT_INKS[pen.ink]);
  }
}

/** The PDF operator itself: pdfkit's types know dashes of two lengths only. */
function writeDashes(document: PDFKit.PDFDocument, dashPt: readonly number[]): void {
  document.addContent(`[${dashPt.map((length) => length.toFixed(2)).join(' ')}] 0 d`);
}

function drawText(document: PDFKit.PDFDocument, shape: TextShape): void {
  const runs = textRuns(document, shape.text, shape.face).map((run) => ({
    ...run,
    widthPt: document.font(run.font).fontSize(shape.sizePt).widthOfString(run.text),
  }));
  const widthPt = runs.reduce((sum, run) => sum + run.widthPt, 0);
  let x = { start: 0, middle: -widthPt / 2, end: -widthPt }[shape.anchor];
  document.save();
  document.translate(shape.at.x, shape.at.y);
  if (shape.turnRad !== 0) document.rotate((shape.turnRad * 180) / Math.PI);
  document.fillColor(PRINT_INKS[shape.ink]);
  for (const run of runs) {
    document
      .font(run.font)
      .fontSize(shape.sizePt)
      .text(run.text, x, 0, { lineBreak: false, baseline: 'alphabetic' });
    x += run.widthPt;
  }
  document.restore();
}

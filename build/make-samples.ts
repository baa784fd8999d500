import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { contactSpring } from './sample-contact-spring';
import { dxfText, type SampleDrawing } from './dxf-text';
import { heatSinkSpacer } from './sample-heat-sink-spacer';
import { hingeLeaf } from './sample-hinge-leaf';
import { strikerPlate } from './sample-striker-plate';
import { exampleStyle } from '../core/example-style';
import { styleFileEnding } from '../core/program-style';
import { shippedTechnology } from '../core/shipped-technology';
import { technologyFileEnding } from '../core/technology';
import { writeTechnologyFile } from '../core/technology-file';
import { writeStyleFile } from '../core/write-style-file';

/** `npm run samples`: writes the drawings and files in samples/. They are our own inventions; the same input gives the same bytes. */
const samples: Readonly<Record<string, SampleDrawing>> = {
  'rain-gauge-contact-spring': contactSpring,
  'letterbox-hinge-leaf': hingeLeaf,
  'bicycle-bell-striker-plate': strikerPlate,
  'heat-sink-spacer-inch': heatSinkSpacer,
};

const folder = fileURLToPath(new URL('../../samples/', import.meta.url));
mkdirSync(folder, { recursive: true });
const files: Readonly<Record<string, string>> = {
  [`workshop-example${styleFileEnding}`]: writeStyleFile(exampleStyle),
  [`starting-values${technologyFileEnding}`]: writeTechnologyFile(shippedTechnology),
};

for (const [name, drawing] of Object.entries(samples)) {
  writeFileSync(`${folder}${name}.dxf`, dxfText(drawing));
  console.log(`samples/${name}.dxf`);
}
for (const [name, text] of Object.entries(files)) {
  writeFileSync(`${folder}${name}`, text);
  console.log(`samples/${name}`);
}

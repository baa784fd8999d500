import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { contactSpring } from './sample-contact-spring';
import { dxfText } from './dxf-text';
import { heatSinkSpacer } from './sample-heat-sink-spacer';
import { lampBracket } from './sample-lamp-bracket';
import { hingeLeaf } from './sample-hinge-leaf';
import { measuredPoints } from './sample-measured-points';
import { musicBoxCam, spiceTinSpring } from './sample-other-formats';
import { strikerPlate } from './sample-striker-plate';
import { exampleStyle } from '../core/example-style';
import { styleFileEnding } from '../core/program-style';
import { shippedTechnology } from '../core/shipped-technology';
import { technologyFileEnding } from '../core/technology';
import { writeTechnologyFile } from '../core/technology-file';
import { writeStyleFile } from '../core/write-style-file';

/** `npm run samples`: writes the drawings in samples/. They are our own inventions; the same input gives the same bytes. */
const samples: Readonly<Record<string, string>> = {
  'rain-gauge-contact-spring.dxf': dxfText(contactSpring),
  'letterbox-hinge-leaf.dxf': dxfText(hingeLeaf),
  'bicycle-bell-striker-plate.dxf': dxfText(strikerPlate),
  'heat-sink-spacer-inch.dxf': dxfText(heatSinkSpacer),
  'as-sent/picnic-lamp-bracket.dxf': dxfText(lampBracket),
  'as-sent/spice-tin-spring.svg': spiceTinSpring,
  'as-sent/music-box-cam.csv': musicBoxCam(),
};

const folder = fileURLToPath(new URL('../../samples/', import.meta.url));
mkdirSync(`${folder}as-sent`, { recursive: true });
const spring = 'rain-gauge-contact-spring.dxf';
const files: Readonly<Record<string, string>> = {
  ...samples,
  'rain-gauge-contact-spring-measured.csv': measuredPoints(spring, dxfText(contactSpring)),
  [`workshop-example${styleFileEnding}`]: writeStyleFile(exampleStyle),
  [`starting-values${technologyFileEnding}`]: writeTechnologyFile(shippedTechnology),
};

for (const [name, text] of Object.entries(files)) {
  writeFileSync(`${folder}${name}`, text);
  console.log(`samples/${name}`);
}

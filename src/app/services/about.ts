import { FILE_VERSION } from '../../scene/document.ts'
import type { AboutInfo } from '../../ui/services.ts'
import { version } from '../../../package.json'

const mit = 'MIT Licence: permission is granted, free of charge, to use, copy, modify, merge, publish, distribute, sublicense and sell copies, provided the copyright notice and this notice are included. Provided "as is", without warranty of any kind.'
const isc = 'ISC Licence: permission to use, copy, modify and distribute for any purpose with or without fee is granted, provided the copyright notice and this notice appear in all copies. Provided "as is", without warranty of any kind.'

/** Notices of what ships with the app; the full texts lie in each package. */
export const aboutInfo: AboutInfo = {
  appVersion: version,
  fileVersion: FILE_VERSION,
  licence: { en: 'All rights reserved until the owner decides on a licence.', es: 'Todos los derechos reservados hasta que el propietario decida una licencia.' },
  notices: [
    { name: 'react, react-dom, react-konva, konva, zustand, zod, pdfkit, fflate, qrcode-generator, @tarikjabiri/dxf, dxf-parser, papaparse', licence: 'MIT', text: mit },
    { name: 'idb, delaunator', licence: 'ISC', text: isc },
    { name: 'robust-predicates', licence: 'Unlicense', text: 'Released into the public domain by its author.' },
    { name: 'clipper2-ts', licence: 'BSL-1.0', text: 'Boost Software Licence 1.0: use, reproduction, display, distribution and preparation of derivative works are permitted, provided the notice is kept in source copies.' },
    { name: 'Lettering: Fira Sans Condensed', licence: 'OFL 1.1', text: 'SIL Open Font Licence 1.1: may be used, studied, modified and redistributed freely as long as it is not sold by itself.' },
  ],
}

/** How a document looks on paper: black on white, wide tables across, page numbers at the foot. */
export const printLook = `
@page { size: letter landscape; margin: 16mm 14mm 18mm; @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 9pt sans-serif; } }
body { margin: 0; color: #000; font: 10pt/1.4 "Liberation Sans", Arial, sans-serif; }
header { break-after: page; padding-top: 30mm; }
h1 { font-size: 24pt; line-height: 1.2; margin: 0 0 10mm; }
h2 { font-size: 13pt; margin: 6mm 0 2mm; break-after: avoid; }
dl { display: grid; grid-template-columns: 48mm 1fr; gap: 1.5mm 5mm; font-size: 11pt; }
dt { color: #333; }
dd { margin: 0; }
section.chart img { display: block; width: 200mm; height: auto; max-height: 140mm; object-fit: contain; object-position: left; }
.says { font-weight: 700; max-width: 200mm; }
section.chart { break-inside: avoid; }
table { border-collapse: collapse; width: 100%; font-size: 8.5pt; font-variant-numeric: tabular-nums; }
caption { text-align: left; padding-bottom: 1mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { text-align: left; vertical-align: top; padding: 0.8mm 1.5mm; border-bottom: 0.2mm solid #999; font-weight: 400; }
thead th { font-weight: 700; border-bottom: 0.4mm solid #000; }
tfoot th, tfoot td { font-weight: 700; border-top: 0.4mm solid #000; }
.figure { text-align: right; }
li { max-width: 200mm; }
`;

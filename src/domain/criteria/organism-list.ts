/**
 * Organisms that laboratories report from urine and blood, one genus a line: `Genus: species, species`. Curated by us:
 * names as in the List of Prokaryotic names with Standing in Nomenclature and in common use, from memory. A genus alone
 * stands for "species not told". What is not here waits for a person to choose its group.
 */
export const gramNegative = `
Achromobacter: xylosoxidans
Acinetobacter: baumannii, calcoaceticus, haemolyticus, johnsonii, junii, lwoffii, nosocomialis, pittii, radioresistens
Aeromonas: caviae, hydrophila, veronii
Alcaligenes: faecalis
Bacteroides: fragilis, thetaiotaomicron
Burkholderia: cepacia
Campylobacter: coli, jejuni
Chryseobacterium: indologenes
Citrobacter: amalonaticus, braakii, farmeri, freundii, koseri, youngae
Cronobacter: sakazakii
Delftia: acidovorans
Edwardsiella: tarda
Elizabethkingia: anophelis, meningoseptica
Enterobacter: asburiae, cloacae, hormaechei, kobei, ludwigii
Escherichia: coli, fergusonii, hermannii
Fusobacterium: nucleatum
Gardnerella: vaginalis
Haemophilus: influenzae, parainfluenzae
Hafnia: alvei
Klebsiella: aerogenes, oxytoca, ozaenae, pneumoniae, variicola
Kluyvera: ascorbata
Leclercia: adecarboxylata
Moraxella: catarrhalis
Morganella: morganii
Myroides: odoratimimus
Neisseria: gonorrhoeae, meningitidis
Ochrobactrum: anthropi
Pantoea: agglomerans
Pasteurella: multocida
Prevotella: bivia, melaninogenica
Proteus: hauseri, mirabilis, penneri, vulgaris
Providencia: alcalifaciens, rettgeri, stuartii
Pseudomonas: aeruginosa, fluorescens, putida, stutzeri
Ralstonia: pickettii
Raoultella: ornithinolytica, planticola
Salmonella: enterica
Serratia: liquefaciens, marcescens, odorifera
Shewanella: algae, putrefaciens
Shigella: dysenteriae, flexneri, sonnei
Sphingomonas: paucimobilis
Stenotrophomonas: maltophilia
Yersinia: enterocolitica
`;

export const gramPositive = `
Actinobaculum: schaalii
Actinomyces: neuii, turicensis
Actinotignum: schaalii
Aerococcus: sanguinicola, urinae, viridans
Alloscardovia: omnicolens
Bacillus: anthracis, cereus, subtilis
Bifidobacterium: breve
Clostridioides: difficile
Clostridium: perfringens
Corynebacterium: amycolatum, diphtheriae, jeikeium, riegelii, striatum, urealyticum
Cutibacterium: acnes
Enterococcus: avium, casseliflavus, durans, faecalis, faecium, gallinarum, hirae, raffinosus
Gemella: haemolysans, morbillorum
Granulicatella: adiacens
Kocuria: kristinae, rosea
Lactobacillus: acidophilus, gasseri, jensenii
Lactococcus: lactis
Leuconostoc: mesenteroides
Listeria: monocytogenes
Micrococcus: luteus
Mycobacterium: tuberculosis
Nocardia: asteroides
Pediococcus: acidilactici
Peptostreptococcus: anaerobius
Rhodococcus: equi
Rothia: mucilaginosa
Staphylococcus: aureus, auricularis, capitis, caprae, cohnii, epidermidis, haemolyticus, hominis, lugdunensis, pettenkoferi, pseudintermedius, saprophyticus, schleiferi, simulans, warneri, xylosus
Streptococcus: agalactiae, anginosus, bovis, constellatus, dysgalactiae, gallolyticus, intermedius, mitis, mutans, oralis, parasanguinis, pneumoniae, pyogenes, salivarius, sanguinis, vestibularis
`;

/** Wall-less bacteria, which take no Gram stain. */
export const otherBacteria = `
Mycoplasma: genitalium, hominis
Ureaplasma: parvum, urealyticum
`;

/**
 * Yeasts, molds and dimorphic fungi. Blastomyces to Pneumocystis are never usable for any criterion (CDC Patient Safety
 * Component Manual, chapter 2, read in the edition of January 2018); in urine none of these is.
 */
export const fungi = `
Aspergillus: flavus, fumigatus, niger
Blastomyces: dermatitidis
Candida: albicans, auris, dubliniensis, glabrata, guilliermondii, kefyr, krusei, lusitaniae, parapsilosis, tropicalis
Coccidioides: immitis, posadasii
Cryptococcus: gattii, neoformans
Fusarium: solani
Geotrichum: candidum
Histoplasma: capsulatum
Malassezia: furfur
Nakaseomyces: glabratus
Paracoccidioides: brasiliensis
Penicillium:
Pichia: kudriavzevii
Pneumocystis: jirovecii
Rhodotorula: mucilaginosa
Saccharomyces: cerevisiae
Trichosporon: asahii
`;

/** Parasites and viruses, which no criterion of a urinary tract infection takes. */
export const otherOrganisms = `
Entamoeba: histolytica
Enterobius: vermicularis
Schistosoma: haematobium
Trichomonas: vaginalis
`;

/**
 * Genera all of whose species are common commensals, but for the species named, and species that are: CDC Patient
 * Safety Component Manual, chapter 4 (list of common commensals, from memory: diphtheroids, Bacillus but not anthracis,
 * Cutibacterium, coagulase-negative staphylococci, viridans streptococci, Aerococcus, Micrococcus, Rhodococcus).
 */
export const commensalGenera: Readonly<Record<string, readonly string[]>> = {
  Aerococcus: [],
  Bacillus: ["anthracis"],
  Corynebacterium: ["diphtheriae"],
  Cutibacterium: [],
  Micrococcus: [],
  Rhodococcus: [],
  Staphylococcus: ["aureus", "pseudintermedius", "schleiferi"],
};
export const viridansStreptococci =
  "anginosus, constellatus, intermedius, mitis, mutans, oralis, parasanguinis, salivarius, sanguinis, vestibularis";

/** Names that cover several species, each with what it covers: genera, or species as `Genus species`. */
export const coveringNames: Readonly<
  Record<string, { group: "bacterium" | "yeast-or-mold"; covers: readonly string[] }>
> = {
  "Coagulase-negative staphylococci": {
    group: "bacterium",
    covers:
      "auricularis capitis caprae cohnii epidermidis haemolyticus hominis lugdunensis pettenkoferi saprophyticus simulans warneri xylosus"
        .split(" ")
        .map((species) => `Staphylococcus ${species}`),
  },
  "Viridans group streptococci": {
    group: "bacterium",
    covers: viridansStreptococci.split(", ").map((species) => `Streptococcus ${species}`),
  },
  Diphtheroids: { group: "bacterium", covers: ["Corynebacterium"] },
};

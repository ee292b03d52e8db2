/**
 * Older names of species that were renamed or were spelled otherwise, one species a line: the name of the list, then the
 * others in plain form. Old and new name are one organism. From memory (List of Prokaryotic names with Standing in
 * Nomenclature; for yeasts, names in common use).
 */
const renamed = `
Acinetobacter baumannii: acinetobacter anitratus, acinetobacter calcoaceticus baumannii, acinetobacter baumannii calcoaceticus
Actinomyces neuii: winkia neuii
Actinotignum schaalii: actinobaculum schaalii
Aggregatibacter actinomycetemcomitans: actinobacillus actinomycetemcomitans, haemophilus actinomycetemcomitans
Aggregatibacter aphrophilus: haemophilus aphrophilus, haemophilus paraphrophilus
Achromobacter xylosoxidans: alcaligenes xylosoxidans
Bacillus megaterium: priestia megaterium
Bacteroides vulgatus: phocaeicola vulgatus
Brucella anthropi: ochrobactrum anthropi
Burkholderia cepacia: pseudomonas cepacia
Candida auris: candidozyma auris
Candida famata: debaryomyces hansenii
Candida guilliermondii: meyerozyma guilliermondii, pichia guilliermondii
Candida kefyr: kluyveromyces marxianus, candida pseudotropicalis
Candida lipolytica: yarrowia lipolytica
Candida lusitaniae: clavispora lusitaniae
Candida norvegensis: pichia norvegensis
Candida pelliculosa: wickerhamomyces anomalus, pichia anomala
Candida rugosa: diutina rugosa
Candida utilis: cyberlindnera jadinii
Chryseobacterium indologenes: flavobacterium indologenes
Citrobacter koseri: citrobacter diversus, levinea malonatica
Clostridioides difficile: clostridium difficile, c diff, peptoclostridium difficile
Clostridium sordellii: paeniclostridium sordellii
Corynebacterium jeikeium: corynebacterium group jk, corynebacterium jk
Corynebacterium urealyticum: corynebacterium group d2
Cronobacter sakazakii: enterobacter sakazakii
Cutibacterium: propionibacterium
Cutibacterium acnes: propionibacterium acnes
Cutibacterium avidum: propionibacterium avidum
Cutibacterium granulosum: propionibacterium granulosum
Delftia acidovorans: comamonas acidovorans, pseudomonas acidovorans
Eggerthella lenta: eubacterium lentum
Elizabethkingia meningoseptica: chryseobacterium meningosepticum, flavobacterium meningosepticum
Enterococcus faecalis: enterococcus fecalis, streptococcus faecalis, streptococcus fecalis
Enterococcus faecium: enterococcus fecium, streptococcus faecium
Finegoldia magna: peptostreptococcus magnus, peptococcus magnus
Gardnerella vaginalis: haemophilus vaginalis
Klebsiella aerogenes: enterobacter aerogenes
Klebsiella pneumoniae: klebsiella ozaenae, klebsiella rhinoscleromatis
Kocuria kristinae: micrococcus kristinae
Lactobacillus casei: lacticaseibacillus casei
Lactobacillus fermentum: limosilactobacillus fermentum
Lactobacillus paracasei: lacticaseibacillus paracasei
Lactobacillus plantarum: lactiplantibacillus plantarum
Lactobacillus rhamnosus: lacticaseibacillus rhamnosus
Lelliottia amnigena: enterobacter amnigenus
Moraxella catarrhalis: branhamella catarrhalis
Morganella morganii: proteus morganii
Mycobacterium abscessus: mycobacteroides abscessus
Mycobacterium chelonae: mycobacteroides chelonae
Mycobacterium fortuitum: mycolicibacterium fortuitum
Mycoplasma hominis: metamycoplasma hominis
Mycoplasma genitalium: mycoplasmoides genitalium
Nakaseomyces glabratus: candida glabrata, torulopsis glabrata, nakaseomyces glabrata
Pantoea agglomerans: enterobacter agglomerans, erwinia herbicola
Pichia kudriavzevii: candida krusei, issatchenkia orientalis
Pluralibacter gergoviae: enterobacter gergoviae
Prevotella melaninogenica: bacteroides melaninogenicus
Providencia alcalifaciens: proteus inconstans
Providencia rettgeri: proteus rettgeri
Pseudomonas oryzihabitans: flavimonas oryzihabitans
Pseudomonas stutzeri: stutzerimonas stutzeri
Ralstonia pickettii: pseudomonas pickettii, burkholderia pickettii
Raoultella ornithinolytica: klebsiella ornithinolytica
Raoultella planticola: klebsiella planticola
Raoultella terrigena: klebsiella terrigena
Rhizobium radiobacter: agrobacterium radiobacter
Rothia mucilaginosa: stomatococcus mucilaginosus
Salmonella enterica: salmonella typhi, salmonella paratyphi, salmonella typhimurium, salmonella enteritidis, salmonella choleraesuis
Saprochaete capitata: blastoschizomyces capitatus, magnusiomyces capitatus
Shewanella putrefaciens: pseudomonas putrefaciens, alteromonas putrefaciens
Sphingomonas paucimobilis: pseudomonas paucimobilis
Staphylococcus lentus: mammaliicoccus lentus
Staphylococcus sciuri: mammaliicoccus sciuri
Staphylococcus vitulinus: mammaliicoccus vitulinus
Stenotrophomonas maltophilia: xanthomonas maltophilia, pseudomonas maltophilia
Streptococcus anginosus: streptococcus milleri, streptococcus anginosus milleri
Trueperella pyogenes: arcanobacterium pyogenes
`;

/** Abbreviations and short names of the bench, in plain form, as above. Common practice, from memory. */
const short = `
Acinetobacter baumannii: crab
Bacillus not anthracis: bacillus species not anthracis, bacillus sp not anthracis, bacillus spp not anthracis, bacillus species not b anthracis, bacillus sp not b anthracis
Corynebacterium not diphtheriae: corynebacterium species not diphtheriae, corynebacterium sp not diphtheriae, corynebacterium spp not diphtheriae
Citrobacter: citro
Coagulase-negative staphylococci: cons, cns, scn, staphylococcus coagulase negative, coagulase negative staphylococcus, coagulase negative staphylococci, staphylococci coagulase negative, staphylococcus coagulase negative not saprophyticus, staphylococcus not aureus, non aureus staphylococcus
Clostridioides difficile: cdiff
Diphtheroids: diphtheroid, diphtheroid bacilli, diphtheroid bacillus, coryneform bacteria, coryneforms, coryneform bacilli, corynebacterium diphtheroids
Enterococcus faecalis: vre faecalis
Enterococcus faecium: vre faecium
Haemophilus influenzae: h flu
Mycobacterium tuberculosis: mtb
Neisseria gonorrhoeae: neisseria gonorrhea, gc
Enterococcus: vre, vse, enterococci, group d enterococcus, enterococcus group d, vancomycin resistant enterococcus, vancomycin resistant enterococci
Escherichia coli: ecoli, e coli, esch coli, ehec, stec, etec
Klebsiella: kleb, klebs
Lactobacillus: lactobacilli
Nakaseomyces glabratus: c glabrata
Pseudomonas: pseudomonads
Pseudomonas aeruginosa: crpa, pseudomonas pyocyanea, ps pyocyanea
Staphylococcus: staph, staphylococci
Staphylococcus aureus: mrsa, mssa, orsa, ossa, visa, vrsa, coagulase positive staphylococcus, staphylococcus coagulase positive, coagulase positive staphylococci
Staphylococcus epidermidis: mrse
Streptococcus: strep, streptococci
Streptococcus agalactiae: gbs
Streptococcus bovis group: streptococcus bovis
Streptococcus pneumoniae: pneumococcus, pneumococci
Streptococcus pyogenes: gas
Viridans group streptococci: vgs, streptococcus viridans, viridans streptococcus, viridans streptococci, viridans group streptococcus, streptococcus viridans group
`;

/** Every other name of the list in plain form, with the name of the list. */
export const otherNames: ReadonlyMap<string, string> = new Map(
  [renamed, short].flatMap((lines) =>
    lines
      .trim()
      .split("\n")
      .flatMap((line) => {
        const [name = "", others = ""] = line.split(": ");
        return others.split(", ").map((other) => [other, name] as const);
      }),
  ),
);

/** Words of the bench for genera where the beginning of the name would not tell, in plain form. */
export const genusWords: Readonly<Record<string, string>> = {
  ps: "pseudomonas",
  pseudo: "pseudomonas",
  staph: "staphylococcus",
  staphylococci: "staphylococcus",
  strep: "streptococcus",
  strept: "streptococcus",
  streptococci: "streptococcus",
  enterococci: "enterococcus",
};

/**
 * Organisms that laboratories report from urine and blood, one genus a line: `Genus: species, species`. A genus alone
 * stands for "species not identified". What is not here waits for a person to choose its group.
 *
 * Curated by us, from memory, with the names of the List of Prokaryotic names with Standing in Nomenclature and those in
 * common use. The public package registry has no open list of clinical organisms; the open lists elsewhere are
 * share-alike or non-commercial (LPSN: CC BY-SA 4.0, MycoBank: CC BY-NC-ND 4.0) and are not copied here.
 */
export const gramNegative = `
Achromobacter: denitrificans, xylosoxidans
Acinetobacter: baumannii, bereziniae, calcoaceticus, haemolyticus, johnsonii, junii, lwoffii, nosocomialis, pittii, radioresistens, ursingii
Actinobacillus:
Aeromonas: caviae, hydrophila, sobria, veronii
Aggregatibacter: actinomycetemcomitans, aphrophilus
Alcaligenes: faecalis
Bacteroides: fragilis, ovatus, thetaiotaomicron, uniformis, vulgatus
Bordetella: bronchiseptica
Brevundimonas: diminuta, vesicularis
Brucella: abortus, anthropi, melitensis
Burkholderia: cenocepacia, cepacia, gladioli, multivorans, pseudomallei
Campylobacter: coli, fetus, jejuni, ureolyticus
Capnocytophaga: canimorsus
Cedecea: davisae, lapagei
Chromobacterium: violaceum
Chryseobacterium: gleum, indologenes
Citrobacter: amalonaticus, braakii, farmeri, freundii, koseri, sedlakii, werkmanii, youngae
Comamonas: testosteroni
Cronobacter: sakazakii
Cupriavidus: pauculus
Delftia: acidovorans
Edwardsiella: tarda
Eikenella: corrodens
Elizabethkingia: anophelis, meningoseptica
Enterobacter: asburiae, bugandensis, cancerogenus, cloacae, hormaechei, kobei, ludwigii, roggenkampii
Escherichia: albertii, coli, fergusonii, hermannii, vulneris
Ewingella: americana
Francisella: tularensis
Fusobacterium: necrophorum, nucleatum
Gardnerella: vaginalis
Haemophilus: haemolyticus, influenzae, parainfluenzae
Hafnia: alvei, paralvei
Kingella: kingae
Klebsiella: aerogenes, oxytoca, michiganensis, pneumoniae, quasipneumoniae, variicola
Kluyvera: ascorbata, cryocrescens, intermedia
Leclercia: adecarboxylata
Legionella: pneumophila
Lelliottia: amnigena
Moraxella: catarrhalis, osloensis
Morganella: morganii
Myroides: odoratimimus, odoratus
Neisseria: gonorrhoeae, meningitidis, sicca, subflava
Oligella: urethralis, ureolytica
Pantoea: agglomerans
Parabacteroides: distasonis
Pasteurella: multocida
Plesiomonas: shigelloides
Pluralibacter: gergoviae
Porphyromonas: asaccharolytica
Prevotella: bivia, disiens, melaninogenica
Proteus: cibarius, hauseri, mirabilis, penneri, vulgaris
Providencia: alcalifaciens, rettgeri, rustigianii, stuartii
Pseudomonas: aeruginosa, alcaligenes, fluorescens, mendocina, monteilii, mosselii, oryzihabitans, putida, stutzeri
Psychrobacter:
Ralstonia: mannitolilytica, pickettii
Raoultella: ornithinolytica, planticola, terrigena
Rhizobium: radiobacter
Roseomonas:
Salmonella: enterica
Serratia: fonticola, liquefaciens, marcescens, odorifera, plymuthica, rubidaea
Shewanella: algae, putrefaciens
Shigella: boydii, dysenteriae, flexneri, sonnei
Sphingobacterium: multivorum, spiritivorum
Sphingomonas: paucimobilis
Stenotrophomonas: maltophilia
Veillonella: parvula
Vibrio: alginolyticus, cholerae, parahaemolyticus, vulnificus
Yersinia: enterocolitica, pseudotuberculosis
`;

export const gramPositive = `
Abiotrophia: defectiva
Actinomyces: israelii, naeslundii, neuii, odontolyticus, turicensis, urogenitalis
Actinotignum: sanguinis, schaalii
Aerococcus: christensenii, sanguinicola, urinae, viridans
Alloscardovia: omnicolens
Anaerococcus: prevotii
Arcanobacterium: haemolyticum
Arthrobacter:
Bacillus: anthracis, cereus, circulans, licheniformis, megaterium, pumilus, subtilis, thuringiensis
Bifidobacterium: breve
Brevibacterium: casei
Clostridioides: difficile
Clostridium: perfringens, ramosum, septicum, sordellii, sporogenes, tertium
Corynebacterium: afermentans, amycolatum, aurimucosum, diphtheriae, glucuronolyticum, jeikeium, minutissimum, pseudodiphtheriticum, riegelii, striatum, tuberculostearicum, urealyticum, xerosis
Cutibacterium: acnes, avidum, granulosum
Dermabacter: hominis
Eggerthella: lenta
Enterococcus: avium, casseliflavus, dispar, durans, faecalis, faecium, gallinarum, hirae, malodoratus, mundtii, raffinosus
Erysipelothrix: rhusiopathiae
Facklamia: hominis, languida
Finegoldia: magna
Gemella: haemolysans, morbillorum
Globicatella: sanguinis
Gordonia: sputi
Granulicatella: adiacens, elegans
Kocuria: kristinae, rosea, varians
Kytococcus: sedentarius
Lactobacillus: acidophilus, casei, crispatus, delbrueckii, fermentum, gasseri, iners, jensenii, paracasei, plantarum, rhamnosus
Lactococcus: garvieae, lactis
Leuconostoc: mesenteroides
Listeria: monocytogenes
Lysinibacillus: sphaericus
Microbacterium:
Micrococcus: luteus, lylae
Mobiluncus: curtisii
Mycobacterium: abscessus, avium, bovis, chelonae, fortuitum, tuberculosis
Nocardia: asteroides, farcinica
Paenibacillus:
Pediococcus: acidilactici, pentosaceus
Peptoniphilus: asaccharolyticus, harei
Peptostreptococcus: anaerobius
Rhodococcus: equi
Rothia: dentocariosa, mucilaginosa
Staphylococcus: argenteus, aureus, auricularis, capitis, caprae, cohnii, epidermidis, haemolyticus, hominis, hyicus, intermedius, lentus, lugdunensis, pasteuri, pettenkoferi, pseudintermedius, saccharolyticus, saprophyticus, schleiferi, sciuri, simulans, vitulinus, warneri, xylosus
Streptococcus: agalactiae, anginosus, canis, constellatus, cristatus, dysgalactiae, equi, equinus, gallolyticus, gordonii, infantarius, infantis, intermedius, lutetiensis, mitis, mutans, oralis, parasanguinis, pasteurianus, pneumoniae, pseudopneumoniae, pyogenes, salivarius, sanguinis, sinensis, sobrinus, suis, thermophilus, vestibularis
Trueperella: bernardiae, pyogenes
Vagococcus:
Weissella: confusa
`;

/** Wall-less bacteria, which take no Gram stain, and others that are not grown on plates. */
export const otherBacteria = `
Chlamydia: trachomatis
Leptospira: interrogans
Mycoplasma: genitalium, hominis, pneumoniae
Treponema: pallidum
Ureaplasma: parvum, urealyticum
`;

/**
 * Yeasts, molds and dimorphic fungi. Blastomyces to Pneumocystis are never usable for any criterion (CDC Patient Safety
 * Component Manual, chapter 2, read in the edition of January 2018); in urine none of these is.
 */
export const fungi = `
Acremonium:
Alternaria: alternata
Aspergillus: flavus, fumigatus, niger, nidulans, terreus
Blastomyces: dermatitidis
Candida: albicans, auris, ciferrii, dubliniensis, duobushaemulonii, famata, glabrata, guilliermondii, haemulonii, inconspicua, kefyr, krusei, lipolytica, lusitaniae, metapsilosis, nivariensis, norvegensis, orthopsilosis, parapsilosis, pelliculosa, rugosa, tropicalis, utilis
Cladosporium:
Coccidioides: immitis, posadasii
Cryptococcus: albidus, gattii, laurentii, neoformans
Curvularia:
Exophiala: dermatitidis
Fusarium: oxysporum, solani
Geotrichum: candidum
Histoplasma: capsulatum
Lichtheimia:
Malassezia: furfur, pachydermatis
Mucor:
Nakaseomyces: glabratus
Paecilomyces: variotii
Paracoccidioides: brasiliensis
Penicillium:
Pichia: kudriavzevii
Pneumocystis: jirovecii
Rhizopus:
Rhodotorula: glutinis, mucilaginosa
Saccharomyces: cerevisiae
Saprochaete: capitata
Scedosporium: apiospermum
Sporothrix: schenckii
Talaromyces: marneffei
Trichophyton: rubrum
Trichosporon: asahii, inkin, mucoides
`;

/** Parasites and viruses, which no criterion of a urinary tract infection takes. */
export const otherOrganisms = `
Adenovirus:
Cytomegalovirus:
Entamoeba: histolytica
Enterobius: vermicularis
Schistosoma: haematobium
Strongyloides: stercoralis
Trichomonas: vaginalis
`;

import java.io.File;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Judges PDF files by the profiles of two standards. Run by judge.py as `java Judge.java FILE...`.
 *
 * Each line is fields parted by tabs: `checked, file, profile, number of assertions tested`, and
 * `failed, file, profile, clause, test, place, message`. Ends with 0 however the files fare.
 */
public class Judge {
    private static final PDFAFlavour[] PROFILES = {PDFAFlavour.PDFA_3_A, PDFAFlavour.PDFUA_1};
    private static final int MOST_OF_ONE_KIND = 100;

    public static void main(String[] files) throws Exception {
        Logger.getLogger("").setLevel(Level.OFF);
        VeraGreenfieldFoundryProvider.initialise();
        for (String file : files) {
            for (PDFAFlavour profile : PROFILES) {
                try (PDFAParser parser = Foundries.defaultInstance().createParser(new File(file), profile);
                        PDFAValidator validator = Foundries.defaultInstance()
                                .createValidator(profile, MOST_OF_ONE_KIND, false, true, false)) {
                    ValidationResult result = validator.validate(parser);
                    line("checked", file, profile.getId(), String.valueOf(result.getTotalAssertions()));
                    for (TestAssertion one : result.getTestAssertions()) {
                        if (one.getStatus() == TestAssertion.Status.FAILED) {
                            line("failed", file, profile.getId(), one.getRuleId().getClause(),
                                    String.valueOf(one.getRuleId().getTestNumber()),
                                    one.getLocation().getContext(), one.getMessage());
                        }
                    }
                    if (!result.isCompliant() && result.getTestAssertions().isEmpty()) {
                        line("failed", file, profile.getId(), "", "", "", "not compliant, without a reason");
                    }
                }
            }
        }
    }

    private static void line(String... fields) {
        StringBuilder text = new StringBuilder();
        for (String field : fields) {
            text.append(text.length() == 0 ? "" : "\t").append(String.valueOf(field).replaceAll("\\s+", " "));
        }
        System.out.println(text);
    }
}

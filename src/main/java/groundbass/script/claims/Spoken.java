package groundbass.script.claims;

/** A claim and the stretch of the script that makes it. */
public record Spoken(Claim claim, int from, int to) {
    public static Spoken of(Claim claim, Said said) {
        return new Spoken(claim, said.from(), said.to());
    }
}

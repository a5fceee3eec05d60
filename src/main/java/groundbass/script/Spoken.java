package groundbass.script;

/** A claim and the stretch of the script that makes it. */
record Spoken(Claim claim, int from, int to) {
    static Spoken of(Claim claim, Said said) {
        return new Spoken(claim, said.from(), said.to());
    }
}

package groundbass.score;

import groundbass.theory.Key;

/** What holds at a bar, and the bar's number as players say it. The tempo is the one that the bar starts with. */
public record InForce(int number, Key key, Meter meter, Tempo tempo, Feel feel, Technique style) {}

package groundbass.release;

/** A file as a renderer made it, before it is kept. The bytes are not copied; nobody changes them. */
record Artifact(String name, FileRole role, String mediaType, byte[] bytes) {}

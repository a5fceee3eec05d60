package groundbass.audience.download;

/** How much of a file of the given size has been sent. */
record Progress(long size, Coverage covered, DownloadState state) {
    /** After a span more; {@code otherwise} is the state unless that completes it. What is complete stays so. */
    Progress plus(ByteSpan sent, DownloadState otherwise) {
        Coverage all = covered.plus(sent);
        boolean complete = state == DownloadState.COMPLETE || all.isAllOf(size);
        return new Progress(size, all, complete ? DownloadState.COMPLETE : otherwise);
    }
}

package groundbass.cli;

import groundbass.post.EmailAddress;
import groundbass.site.Config;
import groundbass.site.Groundbass;
import groundbass.site.Secret;
import groundbass.site.SetUpNotice;
import groundbass.site.StartFailure;
import groundbass.store.bucket.BucketName;
import groundbass.web.answer.HandOver;
import groundbass.web.answer.SendfileOffload;
import groundbass.web.answer.SignedAddress;
import groundbass.web.shell.Bearer;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code serve}: runs the site until it is told to stop. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Runs the site.",
        footer = {
            "",
            "Every flag may be given as a variable instead: --smtp-host as GROUNDBASS_SMTP_HOST, and so on.",
            "Give passwords that way: other users of a machine can read flags."
        })
public final class ServeCommand implements Callable<Integer> {
    private static final int MOST_HOPS = 9;
    private static final int SHORTEST_TOKEN = 20;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SiteOptions where;

    @Option(names = "--port", paramLabel = "N", description = "Port to listen on, 0 for any (default: 8420).")
    private int port = 8420;

    @Option(
            names = "--host",
            paramLabel = "H",
            description = "Address to listen on (default: 127.0.0.1, this machine only; 0.0.0.0 for every network).")
    private String host = "127.0.0.1";

    @Option(
            names = "--public-address",
            paramLabel = "URL",
            description = "The site's address as readers type it, such as https://grooves.example; needed for mails,"
                    + " feeds and QR codes.")
    private Optional<String> publicAddress = Optional.empty();

    @Option(names = "--demo", description = "Load the demo series where there is nothing yet, and say so on each page.")
    private boolean demo;

    @Option(
            names = "--keep-nothing",
            description =
                    "Students keep no lessons on their devices; what a device has of this site goes at its next visit.")
    private boolean keepNothing;

    @Option(
            names = "--behind-proxy",
            paramLabel = "HOPS",
            arity = "0..1",
            fallbackValue = "1",
            description = "A front server is the only one who connects. It adds the address that it sees at the end of"
                    + " X-Forwarded-For and sets X-Forwarded-Proto; nothing else is believed. With several, one behind"
                    + " the other: how many (default: 1).")
    private int hops;

    @Option(
            names = "--hand-over",
            paramLabel = "WHERE",
            description =
                    "Who sends files in the place of the program. With files in a folder the front server: PATH is"
                            + " where it finds the data folder, such as /stored/, and is told in the header that"
                            + " --hand-over-header names. With --files the object store: ADDRESS is where readers reach it,"
                            + " such as https://objects.example; they are sent on to an address there that is good for a"
                            + " minute.")
    private Optional<String> handOver = Optional.empty();

    @Option(
            names = "--hand-over-header",
            paramLabel = "NAME",
            description = "Header in which the front server wants to be told which file it sends (default:"
                    + " ${DEFAULT-VALUE}).",
            defaultValue = SendfileOffload.USUAL_HEADER)
    private String handOverHeader = SendfileOffload.USUAL_HEADER;

    @Option(
            names = "--smtp-host",
            paramLabel = "H",
            description = "Mail server; without one, mails wait on the desk to be read there.")
    private Optional<String> smtpHost = Optional.empty();

    @Option(names = "--smtp-port", paramLabel = "N", description = "Port of the mail server (default: 587).")
    private int smtpPort = 587;

    @Option(names = "--smtp-user", paramLabel = "NAME", description = "User of the mail server.")
    private Optional<String> smtpUser = Optional.empty();

    @Option(names = "--smtp-password", paramLabel = "SECRET", description = "Password of the mail server.")
    private Optional<String> smtpPassword = Optional.empty();

    @Option(names = "--smtp-from", paramLabel = "ADDRESS", description = "Address that mails come from.")
    private Optional<String> smtpFrom = Optional.empty();

    @Option(
            names = "--metrics-token",
            paramLabel = "SECRET",
            description = "Figures of the process stand at /metrics for a program that shows this in its Authorization"
                    + " header, at least 20 characters; without it there are none.")
    private Optional<String> metricsToken = Optional.empty();

    @Option(
            names = "--log-form",
            paramLabel = "FORM",
            description = "How the log is written: ${COMPLETION-CANDIDATES} (default: text).")
    private LogForm logForm = LogForm.TEXT;

    @Option(
            names = "--log-level",
            paramLabel = "LEVEL",
            description = "From which level on: ${COMPLETION-CANDIDATES} (default: info).")
    private LogLevel logLevel = LogLevel.INFO;

    @Override
    public Integer call() throws InterruptedException {
        var config = config();
        Logs.write(logForm, logLevel);
        LastResort.arm();
        try {
            runUntilStopped(Groundbass.start(config));
            return CommandLine.ExitCode.OK;
        } catch (RuntimeException e) {
            String advice = StartFailure.advice(e, config).orElseThrow(() -> e);
            spec.commandLine().getErr().println(advice);
            return CommandLine.ExitCode.SOFTWARE;
        }
    }

    private void runUntilStopped(Groundbass site) throws InterruptedException {
        var stopped = new CountDownLatch(1);
        site.whenTaken(other -> LastResort.end(LastResort.SITE_TAKEN));
        site.setUpNotice()
                .text(site.address())
                .or(() -> demo ? Optional.of(SetUpNotice.demoAgain(site.address())) : Optional.empty())
                .ifPresent(this::say);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            LastResort.disarm();
            site.close();
            stopped.countDown();
        }));
        stopped.await();
    }

    private void say(String text) {
        var out = spec.commandLine().getOut();
        out.println(text);
        out.flush();
    }

    public Config config() {
        if (port < 0 || port > 65_535) {
            throw wrong("--port", String.valueOf(port), "a number from 0 to 65535");
        }
        if (hops < 0 || hops > MOST_HOPS) {
            throw wrong("--behind-proxy", String.valueOf(hops), "how many front servers, 1 to " + MOST_HOPS);
        }
        return new Config(
                where.data(),
                host,
                port,
                publicAddress.map(this::origin),
                demo,
                !keepNothing,
                hops,
                handOver.map(this::way),
                where.database(),
                bucket(),
                smtpHost.map(this::mailServer),
                metricsToken.map(this::token));
    }

    private Optional<BucketName> bucket() {
        return where.files().map(text -> BucketName.parse(text)
                .orElseThrow(() -> wrong("--files", text, "an address such as s3://bucket or s3://bucket/prefix")));
    }

    private Secret token(String text) {
        if (text.length() < SHORTEST_TOKEN || !text.matches(Bearer.TOKEN)) {
            String expected = "at least " + SHORTEST_TOKEN + " letters, digits and signs of - . _ ~ + /";
            throw wrong("--metrics-token", "(secret)", expected);
        }
        return new Secret(text);
    }

    private Config.MailServer mailServer(String server) {
        if (smtpPort < 1 || smtpPort > 65_535) {
            throw wrong("--smtp-port", String.valueOf(smtpPort), "a number from 1 to 65535");
        }
        String text = smtpFrom.orElseThrow(() -> wrong("--smtp-from", "", "an address, as --smtp-host is given"));
        var from = EmailAddress.read(text)
                .orElseThrow(() -> wrong("--smtp-from", text, "an address alone, such as news@grooves.example"));
        return new Config.MailServer(server, smtpPort, smtpUser, smtpPassword.map(Secret::new), from);
    }

    private URI origin(String text) {
        String bare = text.endsWith("/") ? text.substring(0, text.length() - 1) : text;
        if (!isOrigin(bare)) {
            throw wrong("--public-address", text, "http:// or https:// and a host, without a path");
        }
        return URI.create(bare);
    }

    private HandOver way(String text) {
        if (where.files().isPresent()) {
            return new SignedAddress(store(text));
        }
        if (!text.matches("/([A-Za-z0-9._-]+/)+") || text.contains("/../")) {
            throw wrong("--hand-over", text, "a path such as /stored/");
        }
        if (!handOverHeader.matches("[A-Za-z0-9-]+")) {
            throw wrong("--hand-over-header", handOverHeader, "the name of a header, of letters, digits and -");
        }
        return new SendfileOffload(text, handOverHeader);
    }

    /** Where readers reach the object store; no front server has its files. */
    private URI store(String text) {
        String bare = text.replaceAll("/$", "");
        if (!isOrigin(bare)) {
            throw wrong(
                    "--hand-over",
                    text,
                    "http:// or https:// and the host at which readers reach the object store, as --files is given");
        }
        return URI.create(bare);
    }

    /** A scheme and a host, perhaps a port, and nothing else. */
    private static boolean isOrigin(String text) {
        try {
            return text.matches("https?://[A-Za-z0-9.\\-\\[\\]:]+") && new URI(text).getHost() != null;
        } catch (URISyntaxException e) {
            return false;
        }
    }

    private ParameterException wrong(String flag, String found, String expected) {
        return new ParameterException(
                spec.commandLine(),
                flag + " (or " + EnvironmentDefaults.variable(flag) + ") is \"" + found + "\"; expected " + expected
                        + ".");
    }
}

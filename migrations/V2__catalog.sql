-- The educator's side: who writes, what series and episodes there are, what is being typed, what was fixed as a
-- revision, and what was uploaded. Portable: H2 and PostgreSQL run the same text.
create table educator (
    id            varchar(16)  not null primary key,
    name          varchar(200) not null,
    email         varchar(320) not null unique, -- lower case
    password_hash varchar(300) not null,
    created_at    timestamp with time zone not null
);

-- At most one row: the one-time code of the first run, kept as a digest until it is used up.
create table setup_code (
    only_row   integer     not null primary key check (only_row = 1),
    code_hash  varchar(64) not null,
    created_at timestamp with time zone not null
);

create table series (
    id          varchar(16)   not null primary key,
    educator_id varchar(16)   not null references educator (id),
    slug        varchar(80)   not null unique,
    title       varchar(200)  not null,
    summary     varchar(2000) not null,
    zone        varchar(60)   not null, -- IANA zone in which this series keeps its hours
    created_at  timestamp with time zone not null
);

-- The state is read from the times: published_at, else scheduled_at, else a draft. Number and slug stay as they are
-- once published_at is set. A number below zero exists only inside the transaction that moves episodes.
create table episode (
    id              varchar(16)   not null primary key,
    series_id       varchar(16)   not null references series (id),
    number          integer       not null,
    slug            varchar(80)   not null,
    title           varchar(200)  not null,
    level           varchar(20)   not null,
    summary         varchar(2000) not null,
    scheduled_at    timestamp with time zone,
    scheduled_zone  varchar(60),
    scheduled_local varchar(30), -- the local time as it was typed, ISO 8601
    published_at    timestamp with time zone,
    created_at      timestamp with time zone not null,
    unique (series_id, number)
);

create index episode_due on episode (scheduled_at);

-- What is being typed: replaced in place, the version tells two open windows apart.
create table draft (
    educator_id varchar(16) not null references educator (id),
    episode_id  varchar(16) not null references episode (id),
    version     integer     not null,
    document    text        not null,
    saved_at    timestamp with time zone not null,
    primary key (educator_id, episode_id)
);

-- Append-only: one whole document each; nothing in the program updates or deletes a row.
create table revision (
    id           varchar(16)   not null primary key,
    episode_id   varchar(16)   not null references episode (id),
    number       integer       not null,
    form_version integer       not null,
    document     text          not null,
    note         varchar(2000) not null,
    educator_id  varchar(16)   not null references educator (id),
    created_at   timestamp with time zone not null,
    unique (episode_id, number)
);

create table upload (
    id            varchar(16)   not null primary key,
    educator_id   varchar(16)   not null references educator (id),
    episode_id    varchar(16)   not null references episode (id),
    original_name varchar(255)  not null, -- for showing only, never for a path
    media_type    varchar(80)   not null, -- as found in the content
    byte_count    bigint        not null,
    sha256        varchar(64)   not null,
    facts         varchar(2000) not null, -- JSON: rate, channels, duration
    created_at    timestamp with time zone not null
);

create index upload_of_episode on upload (episode_id, created_at);
create index upload_sha256 on upload (sha256);

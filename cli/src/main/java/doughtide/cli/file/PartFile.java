package doughtide.cli.file;

import doughtide.core.quantity.InputException;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * The unfinished output of a long job: a file named like the finished one with {@code .part} at its
 * end, which a later run can go on with. Whole lines count; what stands after the last line end is
 * cut off.
 */
public final class PartFile implements Closeable {

  private static final int BLOCK = 1 << 16;

  private final Path path;
  private final FileChannel channel;
  private long lines;
  private long lastLineStart;
  private long end;
  private long unlike;
  private String firstUnlike = "";

  private PartFile(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Opens the file, made if it is not there.
   *
   * @throws InputException if another run is writing it
   */
  public static PartFile open(Path path, String shown) throws IOException {
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    PartFile file = new PartFile(path, channel);
    if (!file.locked()) {
      channel.close();
      throw new InputException(
          FileProblem.quoted(shown) + " is being written by another run: wait for it to end");
    }
    return file;
  }

  private boolean locked() throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  /** Forgets what an earlier run wrote. */
  public void clear() throws IOException {
    channel.truncate(0);
  }

  /**
   * Counts the whole lines and cuts off what stands after the last one.
   *
   * @param heading how many lines at the top are no rows
   * @param ending how a usual row ends, the end of its line included: 1 to 8 bytes
   */
  public void keepWholeLines(int heading, byte[] ending) throws IOException {
    long mask = -1L >>> (Long.SIZE - Byte.SIZE * ending.length);
    long usual = lastBytes(0, ending) & mask;
    long last = 0;
    ByteBuffer block = ByteBuffer.allocate(BLOCK);
    long at = 0;
    while (channel.read(block, at) > 0) {
      for (int i = 0; i < block.position(); i++) {
        last = lastBytes(last, block.get(i));
        if (block.get(i) == '\n') {
          boolean isUsual = lines < heading || (last & mask) == usual;
          wholeLine(at + i + 1, isUsual);
        }
      }
      at += block.position();
      block.clear();
    }
    channel.truncate(end);
    channel.position(end);
  }

  private static long lastBytes(long before, byte... bytes) {
    long last = before;
    for (byte each : bytes) {
      last = last << Byte.SIZE | each & 0xFF;
    }
    return last;
  }

  private void wholeLine(long endsAt, boolean isUsual) throws IOException {
    lines++;
    lastLineStart = end;
    end = endsAt;
    if (!isUsual && ++unlike == 1) {
      firstUnlike = new String(lastLine(), StandardCharsets.UTF_8);
    }
  }

  /** Number of rows that do not end as usual. */
  public long unlike() {
    return unlike;
  }

  /** The first of them with its ending; empty if there is none. */
  public String firstUnlike() {
    return firstUnlike;
  }

  /** Number of whole lines found. */
  public long lines() {
    return lines;
  }

  /** Whether the last whole line is this one. */
  public boolean endsWith(byte[] line) throws IOException {
    return end - lastLineStart == line.length && Arrays.equals(lastLine(), line);
  }

  private byte[] lastLine() throws IOException {
    ByteBuffer line = ByteBuffer.allocate(Math.toIntExact(end - lastLineStart));
    while (line.hasRemaining()) {
      if (channel.read(line, lastLineStart + line.position()) < 0) {
        throw new EOFException("the file became shorter while it was read");
      }
    }
    return line.array();
  }

  /** For what follows. */
  public OutputStream out() {
    return Channels.newOutputStream(channel);
  }

  /** Makes sure that the disk has it all. */
  public void force() throws IOException {
    channel.force(true);
  }

  public Path path() {
    return path;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}

package org.benchwright.engine.plan;

import java.util.List;

/** A part of the procedure: steps to carry out, or a soak. */
public sealed interface Stage permits WorkStage, SoakStage {
    /** Its name. */
    String name();

    /** Its title as people read it. */
    String title();

    /** Names of the hazards shown before it. */
    List<String> hazards();
}

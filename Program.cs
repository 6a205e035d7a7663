using AxisSim.Files.Scenarios; using AxisSim.Core; using AxisSim.Core.Sky; using AxisSim.Core.Gearing;
foreach (var f in args) {
 var sw=System.Diagnostics.Stopwatch.StartNew();
 var r=ScenarioReader.ReadFile(f,[]);
 Console.WriteLine($"== {f} {(r.Scenario is null?"REFUSED":"ok")} {sw.ElapsedMilliseconds} ms");
 foreach(var p in r.Problems) Console.WriteLine("   "+p);
 if(r.Scenario is not {} s) continue;
 foreach(var n in s.Notes) Console.WriteLine("   note "+n);
 foreach(var ax in new[]{MountAxis.Polar,MountAxis.Declination}) {
  var m = ax==MountAxis.Polar? s.Setup.Polar : s.Setup.Declination; if(m is null) continue;
  double sgn = ax==MountAxis.Polar? Math.Sign(s.Setup.Move.End.PolarRadians-s.Setup.Move.Start.PolarRadians):Math.Sign(s.Setup.Move.End.DeclinationRadians-s.Setup.Move.Start.DeclinationRadians);
  double worstG=0, startG=-sgn*s.Setup.Load.GravityTorque(ax,s.Setup.Move.Start);
  for(int i=0;i<=100;i++){ double t=i/100.0; var a=s.Setup.Move.Start; var b=s.Setup.Move.End; var pose=new MountPose(a.PolarRadians+t*(b.PolarRadians-a.PolarRadians),a.DeclinationRadians+t*(b.DeclinationRadians-a.DeclinationRadians)); worstG=Math.Max(worstG,-sgn*s.Setup.Load.GravityTorque(ax,pose)); }
  double J=s.Setup.Load.Inertia(ax,s.Setup.Move.Start.DeclinationRadians), acc=m.Motion.PeakAcceleration, cold=s.Setup.Disturbances.ColdGreaseFactor;
  double f=m.Train.Worm.FrictionCoefficient*cold, L=m.Train.Worm.LeadAngleRadians, c=Math.Cos(m.Train.Worm.PressureAngleRadians);
  double e=m.Train.Worm.GivenDrivingEfficiency ?? (c-f*Math.Tan(L))/(c+f/Math.Tan(L)); double se=m.Train.Stages.Aggregate(1.0,(q,x)=>q*x.Efficiency); double n=m.Train.TotalRatio;
  double fr=m.Bearings.CoulombNewtonMetres*cold+m.Bearings.ViscousNewtonMetreSecondsPerRadian*m.Motion.SlewRateRadiansPerSecond, w=m.Motion.SlewRateRadiansPerSecond*n;
  double mot=m.Motor.CoulombTorqueNewtonMetres+m.Motor.ViscousNewtonMetreSecondsPerRadian*w+m.Motor.RotorInertiaKilogramSquareMetres*acc*n;
  double have=m.Motor.TorqueConstantNewtonMetresPerAmpere*m.Drive.SlewCurrentAmperes;
  double V=4*m.Drive.SupplyVolts/Math.PI, Nr=m.Motor.RotorTeeth, R=m.Motor.ResistanceOhms, Z2=R*R+Math.Pow(Nr*w*m.Motor.InductanceHenries,2), K=m.Motor.TorqueConstantNewtonMetresPerAmpere;
  double hv=K*V/Math.Sqrt(Z2)-K*K*w*R/Z2;
  Console.WriteLine($"   {ax}: n {n:F1} w {w:F1} J {J:F2} acc {acc:F3} J*a {J*acc:F2} gStart {startG:F2} gWorst {worstG:F2} fr {fr:F2} eff {e:F3} need accel {(J*acc+startG+fr)/(n*e*se)+mot:F4} need slew worst {(worstG+fr)/(n*e*se)+mot:F4} have micro {have:F4} volt {hv:F4}");
 }}
